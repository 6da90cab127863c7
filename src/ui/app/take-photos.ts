/** Photographs dropped onto the page go to where the inside is edited, beside the piece. */
import { openSheet, screenOf } from "../shared/screen.ts";
import type { Studio } from "../studio.ts";

export function takePhotos(studio: Studio, photos: readonly File[]): void {
  openSheet(studio, null);
  const { place, go } = studio.getState();
  if (place === "bench" || place === "ideas") go("plan");
  screenOf(studio).setState({ editsInside: true, photos });
}
