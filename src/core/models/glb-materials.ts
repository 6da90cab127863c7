/**
 * The piece's surfaces as glTF materials: clear glass by transmission, index and volume, rough where it is ground.
 * Khronos extensions KHR_materials_transmission, _ior, _volume and _dispersion.
 */

import { colourThrough } from "../optics/casing.ts";
import { ROUGHNESS } from "../optics/finish.ts";
import { abbeNumber, indexAt, LINE_D_NM, opticalGlass } from "../optics/glasses.ts";
import type { Piece } from "../plan/document.ts";
import type { Surface } from "./upright-surfaces.ts";

const NAMES: Readonly<Record<Surface, string>> = {
  skin: "natural skin",
  ground: "ground facets",
  prepolished: "prepolished facets",
  polished: "polished facets",
};

export const USED_EXTENSIONS = [
  "KHR_materials_transmission",
  "KHR_materials_ior",
  "KHR_materials_volume",
  "KHR_materials_dispersion",
] as const;

const MM_PER_METRE = 1000;
/** KHR_materials_dispersion states dispersion as 20 / V_d. */
const DISPERSION_UNIT = 20;

/** glTF squares its roughness factor to get the GGX alpha that finishes are stated in. */
const roughnessFactor = (surface: Surface): number =>
  surface === "skin" ? 0 : Math.sqrt(ROUGHNESS[surface]);

/**
 * A tint seen through `atMm` is what the volume extension calls attenuation colour and distance. It knows one glass only: one of
 * several layers has the colour that they show together along a diameter.
 */
const attenuation = (piece: Piece): object => {
  const { cased, diameterMm } = piece;
  const tint = cased?.length ? { rgb: colourThrough(piece), atMm: diameterMm } : piece.tint;
  return tint ? { attenuationColor: tint.rgb, attenuationDistance: tint.atMm / MM_PER_METRE } : {};
};

export function materialOf(surface: Surface, piece: Piece): object {
  const { dispersion } = opticalGlass(piece.glass);
  const abbe = abbeNumber(dispersion);
  return {
    name: NAMES[surface],
    pbrMetallicRoughness: { metallicFactor: 0, roughnessFactor: roughnessFactor(surface) },
    extensions: {
      KHR_materials_transmission: { transmissionFactor: 1 },
      KHR_materials_ior: { ior: indexAt(dispersion, LINE_D_NM) },
      KHR_materials_volume: { thicknessFactor: piece.diameterMm / MM_PER_METRE, ...attenuation(piece) },
      KHR_materials_dispersion: { dispersion: Number.isFinite(abbe) ? DISPERSION_UNIT / abbe : 0 },
    },
  };
}
