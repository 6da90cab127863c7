/** Photographs dropped onto the page go to where the inside is edited, beside the piece. */
import { studio } from "../studio.ts";
import { openSheet, view } from "./view.ts";

export function takePhotos(photos: readonly File[]): void {
  openSheet(null);
  if (studio.getState().place === "bench") studio.getState().go("plan");
  view.setState({ editsInside: true, photos });
}
