/** The arguments of `render`, checked and with their defaults. */
import type { Vec3 } from "../core/geometry/vec.ts";
import { LIGHT_NAMES, LIGHT_SETTINGS } from "../core/optics/light-settings.ts";
import { MATERIALS, type Material, type MaterialName, plainMaterial } from "../core/optics/materials.ts";
import { RESTS, type Rest, restOnFacet } from "../core/optics/rest.ts";
import { numberOption } from "./number-option.ts";
import type { Options } from "./options.ts";
import { UsageError } from "./usage-error.ts";

export interface RenderOptions {
  readonly out: string;
  readonly format: "png" | "pfm";
  readonly size: number;
  readonly samples: number;
  /** A name of ours, "uniform", or the path of an .hdr picture. */
  readonly light: string;
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
  readonly fieldDeg: number;
  /** Camera from the centre. */
  readonly distanceMm: number;
  readonly bounces: number | null;
  readonly dispersion: boolean;
  readonly seed: number;
  /** A table under the piece, what it is made of, and how the piece lies on it; null without one. */
  readonly table: { readonly material: Material; readonly rest: Rest } | null;
  readonly transparent: boolean;
  /** Of the lens; null for a pinhole, all sharp. */
  readonly fNumber: number | null;
}

/** What may be rested on: facets by name, with their outward normals. */
export type FacetNormals = () => ReadonlyMap<string, Vec3>;

/** The piece, 10 radii away, fills four fifths of this field. */
const DEFAULT_FIELD_DEG = 14;
const DEFAULT_DISTANCE_RADII = 10;
const MOST_PIXELS_ACROSS = 8192;
const MOST_SAMPLES = 1_000_000;
const FARTHEST_MM = 1e6;

const NAMED_VIEWS: Readonly<Record<string, readonly [number, number]>> = {
  front: [0, 90],
  back: [0, -90],
  side: [0, 0],
};

function viewOption(text: string): readonly [number, number] {
  if (Object.hasOwn(NAMED_VIEWS, text)) return NAMED_VIEWS[text];
  const parts = text.split(",").map((part) => (part.trim() === "" ? Number.NaN : Number(part)));
  const [azimuth, elevation] = parts;
  if (parts.length !== 2 || !Number.isFinite(azimuth) || !(Math.abs(elevation) <= 90))
    throw new UsageError(({ refused }) => refused.view(text));
  return [azimuth, elevation];
}

function formatOf(out: string): "png" | "pfm" {
  const format = /\.(png|pfm)$/i.exec(out)?.[1].toLowerCase();
  if (format !== "png" && format !== "pfm") throw new UsageError(({ refused }) => refused.pictureEnding(out));
  return format;
}

function lightOption(text: string): string {
  if (text === "uniform" || Object.hasOwn(LIGHT_SETTINGS, text) || /\.hdr$/i.test(text)) return text;
  const names = LIGHT_NAMES.join(", ");
  throw new UsageError(({ refused }) => refused.light(names, text));
}

function materialOption(text: string): Material {
  if (Object.hasOwn(MATERIALS, text)) return MATERIALS[text as MaterialName];
  const parts = text.split(",").map((part) => (part.trim() === "" ? Number.NaN : Number(part)));
  const [r, g, b] = parts;
  if (parts.length === 3 && parts.every((v) => v >= 0 && v <= 1)) return plainMaterial([r, g, b]);
  const names = Object.keys(MATERIALS).join(", ");
  throw new UsageError(({ refused }) => refused.stage(names, text));
}

function restNamed(name: string, facets: FacetNormals): Rest {
  if (Object.hasOwn(RESTS, name)) return RESTS[name as keyof typeof RESTS];
  const n = facets().get(name);
  if (n) return restOnFacet(n);
  throw new UsageError(({ refused }) => refused.rest(Object.keys(RESTS).join(", "), name));
}

export function tableOption(options: Options, facets: FacetNormals): RenderOptions["table"] {
  if (options.stage !== undefined)
    return {
      material: materialOption(word(options.stage, "")),
      rest: restNamed(word(options.rest, "side"), facets),
    };
  if (options.rest === undefined) return null;
  throw new UsageError(({ refused }) => refused.restAlone);
}

function mustHoldAlpha(format: RenderOptions["format"]): void {
  if (format !== "png") throw new UsageError(({ refused }) => refused.transparent);
}

const word = (value: string | boolean | undefined, fallback: string): string =>
  typeof value === "string" ? value : fallback;

/**
 * @param radiusMm of the piece
 * @param facets asked only when the piece is to rest on one
 * @throws UsageError that names the option and what is allowed
 */
export function renderOptions(
  options: Options,
  radiusMm: number,
  facets: FacetNormals = () => new Map(),
): RenderOptions {
  const out = word(options.out, "");
  const format = formatOf(out);
  const transparent = options.transparent === true;
  if (transparent) mustHoldAlpha(format);
  const table = tableOption(options, facets);
  const [azimuthDeg, elevationDeg] =
    options.from === undefined && table ? table.rest.from : viewOption(word(options.from, "front"));
  const distanceMm = numberOption(options, "distance", DEFAULT_DISTANCE_RADII * radiusMm, {
    min: radiusMm,
    max: FARTHEST_MM,
    open: true,
  });
  return {
    out,
    format,
    size: numberOption(options, "size", 512, { min: 1, max: MOST_PIXELS_ACROSS, whole: true }),
    samples: numberOption(options, "samples", 64, { min: 1, max: MOST_SAMPLES, whole: true }),
    light: lightOption(word(options.light, "north-window")),
    azimuthDeg,
    elevationDeg,
    fieldDeg: numberOption(options, "field", DEFAULT_FIELD_DEG, { min: 0, max: 180, open: true }),
    distanceMm,
    bounces:
      options.bounces === undefined
        ? null
        : numberOption(options, "bounces", 0, { min: 0, max: 1e6, whole: true }),
    dispersion: options.dispersion !== false,
    seed: numberOption(options, "seed", 1, { min: 0, max: 2 ** 32 - 1, whole: true }),
    table,
    transparent,
    fNumber:
      options.aperture === undefined ? null : numberOption(options, "aperture", 0, { min: 0.5, max: 128 }),
  };
}
