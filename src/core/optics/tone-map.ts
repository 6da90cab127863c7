/**
 * From linear radiance to the bytes of a picture: the one place for exposure, tone mapping and sRGB encoding.
 */
import type { Rgb } from "./spectrum.ts";

/** Where the roll-off begins, and how much of what is rolled off goes to white. */
const [START, DESATURATION] = [0.8, 0.15];

/**
 * Tone curve that shows what is below 0.8 as it is, so that a table of 9 % looks like one beside a grey card, and rolls highlights
 * off towards white. The roll-off is that of the Khronos PBR Neutral Tone Mapper, specification 1.0, 2024, without its offset:
 * that one takes away the 4 % that a plastic skin mirrors, which the matt things in these pictures do not have.
 * Takes linear sRGB >= 0, gives 0 .. 1.
 */
export function toneMap(rgb: Rgb): Rgb {
  const [r, g, b] = rgb;
  const peak = Math.max(r, g, b);
  if (peak < START) return rgb;
  const room = 1 - START;
  const rolled = 1 - (room * room) / (peak + room - START);
  const fade = 1 - 1 / (DESATURATION * (peak - rolled) + 1);
  const s = (rolled / peak) * (1 - fade);
  return [r * s + rolled * fade, g * s + rolled * fade, b * s + rolled * fade];
}

/** Linear 0 .. 1 to sRGB 0 .. 1. Source: IEC 61966-2-1. */
export const encodeSrgb = (linear: number): number =>
  linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055;

/** Linear radiance (three floats a pixel) to bytes; colours outside sRGB are held at its border. `gain` multiplies radiance. */
export function toBytes(linear: Float32Array, gain: number | Rgb): Uint8Array {
  const bytes = new Uint8Array(linear.length);
  const [r, g, b] = typeof gain === "number" ? [gain, gain, gain] : gain;
  const lit = (v: number): number => Math.max(0, v);
  for (let i = 0; i < linear.length; i += 3) {
    const mapped = toneMap([lit(linear[i] * r), lit(linear[i + 1] * g), lit(linear[i + 2] * b)]);
    for (let c = 0; c < 3; c++) bytes[i + c] = Math.round(255 * encodeSrgb(Math.min(1, mapped[c])));
  }
  return bytes;
}

/** The same for premultiplied radiance with alpha, four floats a pixel: to straight colour and alpha, as a PNG has them. */
export function toBytesWithAlpha(linear: Float32Array, gain: number | Rgb): Uint8Array {
  const straight = new Float32Array((3 * linear.length) / 4);
  for (let i = 0; i < linear.length / 4; i++) {
    const alpha = linear[4 * i + 3];
    if (alpha > 0) for (let c = 0; c < 3; c++) straight[3 * i + c] = linear[4 * i + c] / alpha;
  }
  const colours = toBytes(straight, gain);
  const bytes = new Uint8Array(linear.length);
  for (let i = 0; i < linear.length / 4; i++) {
    bytes.set(colours.subarray(3 * i, 3 * i + 3), 4 * i);
    bytes[4 * i + 3] = Math.round(255 * linear[4 * i + 3]);
  }
  return bytes;
}
