/** The arguments of `render`, checked and with their defaults. */
import { LIGHT_SETTINGS } from "../core/optics/lights.ts";
import { UsageError } from "./usage-error.ts";

export type Words = Readonly<Record<string, string | boolean | undefined>>;

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
}

/** The piece, 10 radii away, fills four fifths of this field. */
const DEFAULT_FIELD_DEG = 14;
const DEFAULT_DISTANCE_RADII = 10;
const MOST_PIXELS_ACROSS = 8192;
const MOST_SAMPLES = 1_000_000;
const FARTHEST_MM = 1e6;

interface Allowed {
  readonly min: number;
  readonly max: number;
  readonly whole?: boolean;
  /** The ends themselves are not allowed. */
  readonly open?: boolean;
}

function numberOption(words: Words, name: string, fallback: number, allowed: Allowed): number {
  const text = words[name];
  if (text === undefined) return fallback;
  const value = typeof text === "string" && text.trim() !== "" ? Number(text) : Number.NaN;
  const { min, max, whole, open } = allowed;
  const inside = open ? value > min && value < max : value >= min && value <= max;
  if (inside && (!whole || Number.isInteger(value))) return value;
  const range = open ? `between ${min} and ${max}` : `from ${min} to ${max}`;
  throw new UsageError(`--${name} must be ${whole ? "a whole number" : "a number"} ${range}, not "${text}"`);
}

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
    throw new UsageError(
      `--from must be front, back, side or AZIMUTH,ELEVATION in degrees with the elevation from -90 to 90, not "${text}"`,
    );
  return [azimuth, elevation];
}

function formatOf(out: string): "png" | "pfm" {
  const format = /\.(png|pfm)$/i.exec(out)?.[1].toLowerCase();
  if (format !== "png" && format !== "pfm")
    throw new UsageError(`--out must end in .png or .pfm, not "${out}"`);
  return format;
}

function lightOption(text: string): string {
  if (text === "uniform" || Object.hasOwn(LIGHT_SETTINGS, text) || /\.hdr$/i.test(text)) return text;
  const names = Object.keys(LIGHT_SETTINGS).join(", ");
  throw new UsageError(`--light must be ${names}, uniform or an .hdr file, not "${text}"`);
}

const word = (value: string | boolean | undefined, fallback: string): string =>
  typeof value === "string" ? value : fallback;

/**
 * @param radiusMm of the piece
 * @throws UsageError that names the option and what is allowed
 */
export function renderOptions(words: Words, radiusMm: number): RenderOptions {
  const out = word(words.out, "");
  const [azimuthDeg, elevationDeg] = viewOption(word(words.from, "front"));
  const distanceMm = numberOption(words, "distance", DEFAULT_DISTANCE_RADII * radiusMm, {
    min: radiusMm,
    max: FARTHEST_MM,
    open: true,
  });
  return {
    out,
    format: formatOf(out),
    size: numberOption(words, "size", 512, { min: 1, max: MOST_PIXELS_ACROSS, whole: true }),
    samples: numberOption(words, "samples", 64, { min: 1, max: MOST_SAMPLES, whole: true }),
    light: lightOption(word(words.light, "north-window")),
    azimuthDeg,
    elevationDeg,
    fieldDeg: numberOption(words, "field", DEFAULT_FIELD_DEG, { min: 0, max: 180, open: true }),
    distanceMm,
    bounces:
      words.bounces === undefined
        ? null
        : numberOption(words, "bounces", 0, { min: 0, max: 1e6, whole: true }),
    dispersion: words.dispersion !== false,
    seed: numberOption(words, "seed", 1, { min: 0, max: 2 ** 32 - 1, whole: true }),
  };
}
