/** What can be measured on a finished tier. */
import type { MeasureWords } from "../measures.ts";

export const measures: MeasureWords = {
  widthMm: "the facets' width",
  heightMm: "the facets' height",
  gapMm: "the gap between neighbours",
  edgeMm: "the edge that neighbours share",
  acrossMm: "across the pole",
  flatToSkinMm: "flat to opposite skin",
  caliperMm: "what calipers read to the farthest point opposite",
  readDeg: "the angle",
  pivotHeightMm: "the pivot height",
};
