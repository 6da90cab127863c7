/** The pictures inside, side by side in one texture, and where each lies in it. */
import type { SceneDesign } from "../core/optics/inside.ts";
import { halved, type Raster } from "../core/optics/raster.ts";
import type { ByteTexels } from "./packed-scene.ts";

/** Pixels along an edge of a picture on the card; larger ones are halved until they fit: so fine nobody sees them in glass. */
const MOST_EDGE = 1024;

/** Left, top, width, height in the texture; width 0 where nothing is. */
type TexelRect = readonly [number, number, number, number];
const NOWHERE: TexelRect = [0, 0, 0, 0];

export interface PackedPictures {
  readonly texels: ByteTexels | null;
  readonly placeOf: (raster: Raster | null) => TexelRect;
}

function fitted(raster: Raster): Raster {
  let fit = raster;
  while (Math.max(fit.width, fit.height) > MOST_EDGE) fit = halved(fit);
  return fit;
}

function distinct(designs: readonly SceneDesign[]): Raster[] {
  const all = designs.flatMap(({ faces }) => (faces ? [faces.front, faces.back] : []));
  return [...new Set(all)].filter((face): face is Raster => face !== null && face !== "through");
}

/** Cells of one size, as many across as down. */
export function packPictures(designs: readonly SceneDesign[]): PackedPictures {
  const rasters = distinct(designs);
  if (rasters.length === 0) return { texels: null, placeOf: () => NOWHERE };
  const fits = rasters.map(fitted);
  const across = Math.ceil(Math.sqrt(fits.length));
  const cell = {
    width: Math.max(...fits.map((f) => f.width)),
    height: Math.max(...fits.map((f) => f.height)),
  };
  const width = across * cell.width;
  const height = Math.ceil(fits.length / across) * cell.height;
  const rgba = new Uint8Array(4 * width * height);
  const places = new Map<Raster, TexelRect>();
  fits.forEach((fit, k) => {
    const [left, top] = [(k % across) * cell.width, Math.floor(k / across) * cell.height];
    for (let y = 0; y < fit.height; y++)
      rgba.set(fit.rgba.subarray(4 * y * fit.width, 4 * (y + 1) * fit.width), 4 * ((top + y) * width + left));
    places.set(rasters[k], [left, top, fit.width, fit.height]);
  });
  return {
    texels: { width, height, rgba },
    placeOf: (raster) => (raster ? (places.get(raster) ?? NOWHERE) : NOWHERE),
  };
}
