/** Photographs dropped onto the page go to where the inside is edited, beside the piece. */
import { studio } from "../studio.ts";
import { openSheet, view } from "./view.ts";

export function takePhotos(photos: readonly File[]): void {
  openSheet(null);
  const { place, go } = studio.getState();
  if (place === "bench" || place === "ideas") go("plan");
  view.setState({ editsInside: true, photos });
}
