/** Photographs dropped onto the page go to where the inside is edited, beside the piece. */
import { openSheet, screen } from "../shared/screen.ts";
import type { Studio } from "../studio.ts";

export function takePhotos(studio: Studio, photos: readonly File[]): void {
  openSheet(null);
  const { place, go } = studio.getState();
  if (place === "bench" || place === "ideas") go("plan");
  screen.setState({ editsInside: true, photos });
}
