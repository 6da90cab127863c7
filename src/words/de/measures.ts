/** Was an einer fertigen Reihe zu messen ist, wie es nach „Messen“ und „das Ergebnis“ steht. */
import type { MeasureWords } from "../measures.ts";

export const measures: MeasureWords = {
  widthMm: "der Facettenbreite",
  heightMm: "der Facettenhöhe",
  gapMm: "der Lücke zwischen Nachbarinnen",
  edgeMm: "der gemeinsamen Kante",
  acrossMm: "des Maßes über den Pol",
  flatToSkinMm: "des Maßes Fläche bis Haut",
  caliperMm: "der Schieblehre bis zum fernsten Punkt gegenüber",
  readDeg: "des Winkels",
  pivotHeightMm: "der Drehpunkthöhe",
};
