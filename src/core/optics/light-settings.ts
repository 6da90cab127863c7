/** Our own light settings, a record each. */
import { cross, normalize, type Vec3 } from "../geometry/vec.ts";
import type { LightSetting, Panel } from "./lights.ts";
import type { Rgb } from "./spectrum.ts";

interface PanelWords {
  /** Degrees: 0 straight ahead of the piece's front (+z), 90 at its right (+x); and above the horizon. */
  readonly bearing: number;
  readonly height: number;
  /** Full angular width and height, degrees. */
  readonly wide: number;
  readonly high: number;
  readonly rgb: Rgb;
  readonly below?: Rgb;
  readonly round?: boolean;
  readonly panes?: readonly [number, number];
  readonly bar?: number;
  readonly soft?: number;
  readonly distanceMm?: number;
}

function panel(words: PanelWords): Panel {
  const rad = Math.PI / 180;
  const [b, e] = [words.bearing * rad, words.height * rad];
  const towards: Vec3 = [Math.sin(b) * Math.cos(e), Math.sin(e), Math.cos(b) * Math.cos(e)];
  // A panel straight overhead has its upper edge towards the back.
  const right = Math.abs(towards[1]) > 0.999 ? ([1, 0, 0] as Vec3) : normalize(cross(towards, [0, 1, 0]));
  return {
    towards,
    right,
    up: cross(right, towards),
    halfWidth: Math.tan((words.wide / 2) * rad),
    halfHeight: Math.tan((words.high / 2) * rad),
    round: words.round ?? false,
    columns: words.panes?.[0] ?? 1,
    rows: words.panes?.[1] ?? 1,
    bar: words.bar ?? 0,
    soft: words.soft ?? 0.02,
    rgb: words.rgb,
    rgbBelow: words.below ?? words.rgb,
    ...(words.distanceMm !== undefined && { distanceMm: words.distanceMm }),
  };
}

/** Our own settings. Radiances are chosen by eye so that exposure 1 suits all of them; colours are daylight or lamp tints. */
export const LIGHT_SETTINGS = {
  /** A studio with one tall north window, a paler wall with a door opposite, a wooden bench below. */
  "north-window": {
    zenith: [0.3, 0.3, 0.31],
    horizon: [0.55, 0.545, 0.54],
    floor: [0.3, 0.25, 0.2],
    nadir: [0.12, 0.1, 0.08],
    spread: 0.6,
    sweep: 0.7,
    panels: [
      // the room that the window looks into
      panel({
        bearing: 25,
        height: 14,
        wide: 110,
        high: 64,
        soft: 0.8,
        rgb: [0.12, 0.113, 0.105],
        below: [0.06, 0.056, 0.05],
      }),
      panel({
        bearing: -48,
        height: 34,
        wide: 58,
        high: 52,
        panes: [3, 2],
        bar: 0.09,
        soft: 0.015,
        rgb: [5.2, 6.1, 7.4],
        below: [6.4, 6.6, 6.7],
      }),
      panel({
        bearing: 152,
        height: 14,
        wide: 30,
        high: 62,
        soft: 0.05,
        rgb: [1.7, 1.75, 1.85],
        below: [0.9, 0.85, 0.8],
      }),
      panel({ bearing: 70, height: 8, wide: 44, high: 26, soft: 0.2, rgb: [0.62, 0.56, 0.5] }),
    ],
  },
  /** A room with warm spots in a row overhead, walls that they light from above and a lit back wall. */
  "showroom-spots": {
    zenith: [0.14, 0.13, 0.12],
    horizon: [0.34, 0.32, 0.295],
    floor: [0.17, 0.155, 0.14],
    nadir: [0.08, 0.075, 0.07],
    spread: 0.7,
    sweep: 1.1,
    panels: [
      panel({
        bearing: 180,
        height: 6,
        wide: 100,
        high: 60,
        soft: 0.6,
        rgb: [0.95, 0.9, 0.83],
        below: [0.5, 0.47, 0.43],
      }),
      panel({ bearing: -38, height: 46, wide: 17, high: 17, round: true, soft: 0.12, rgb: [19, 16.2, 12.6] }),
      panel({ bearing: 6, height: 58, wide: 34, high: 20, soft: 0.1, rgb: [8.2, 7.2, 5.9] }),
      panel({ bearing: 50, height: 44, wide: 10, high: 10, round: true, soft: 0.12, rgb: [34, 29, 22.5] }),
      panel({ bearing: 140, height: 38, wide: 16, high: 16, round: true, soft: 0.12, rgb: [13, 12.7, 12.3] }),
      panel({
        bearing: -128,
        height: 40,
        wide: 16,
        high: 16,
        round: true,
        soft: 0.12,
        rgb: [13, 12.7, 12.3],
      }),
    ],
  },
  /** Out of doors under cloud: a bright zenith as in the CIE overcast sky (three to one), grass and a dark tree line. */
  overcast: {
    zenith: [1.9, 1.95, 2.05],
    horizon: [0.75, 0.77, 0.8],
    floor: [0.16, 0.18, 0.11],
    nadir: [0.08, 0.095, 0.055],
    spread: 0.9,
    panels: [
      panel({ bearing: 205, height: 2, wide: 70, high: 17, soft: 0.22, rgb: [0.06, 0.075, 0.055] }),
      panel({ bearing: -75, height: 5, wide: 76, high: 24, soft: 0.3, rgb: [0.055, 0.066, 0.045] }),
      panel({ bearing: 95, height: 5, wide: 60, high: 26, soft: 0.25, rgb: [0.05, 0.062, 0.04] }),
      panel({
        bearing: 40,
        height: 4,
        wide: 34,
        high: 20,
        soft: 0.03,
        rgb: [0.32, 0.27, 0.24],
        below: [0.22, 0.19, 0.17],
      }),
    ],
  },
  /** Night indoors: one shaded lamp to the left, its glow on table, wall and ceiling. */
  "one-lamp": {
    zenith: [0.05, 0.037, 0.026],
    horizon: [0.075, 0.056, 0.04],
    floor: [0.06, 0.042, 0.027],
    nadir: [0.024, 0.016, 0.01],
    spread: 0.6,
    sweep: 0.9,
    panels: [
      panel({ bearing: -52, height: 72, wide: 80, high: 60, round: true, soft: 1, rgb: [0.3, 0.21, 0.13] }),
      panel({
        bearing: -52,
        height: 26,
        wide: 27,
        high: 27,
        round: true,
        soft: 0.25,
        rgb: [13.5, 8.8, 4.6],
        below: [10, 6, 2.8],
      }),
      panel({
        bearing: -60,
        height: -34,
        wide: 74,
        high: 40,
        round: true,
        soft: 0.9,
        rgb: [0.7, 0.44, 0.22],
      }),
      panel({ bearing: 165, height: 10, wide: 60, high: 40, soft: 0.8, rgb: [0.2, 0.145, 0.1] }),
      // a dark shelf, and a door to a room where light is on
      panel({ bearing: -112, height: 14, wide: 50, high: 52, soft: 0.04, rgb: [0.008, 0.006, 0.005] }),
      panel({
        bearing: 84,
        height: 16,
        wide: 18,
        high: 44,
        soft: 0.03,
        rgb: [0.75, 0.55, 0.36],
        below: [0.4, 0.28, 0.17],
      }),
    ],
  },
  /**
   * A product table: a soft box of 60 by 42 cm above and behind, at arm's length, a strip at the left for the long reflection, black cards to both sides
   * that draw clear glass its edges, and the dark of the studio in front, over what the table's far end throws back.
   */
  "soft-box": {
    zenith: [0.32, 0.32, 0.325],
    horizon: [0.5, 0.5, 0.5],
    floor: [0.4, 0.4, 0.4],
    nadir: [0.3, 0.3, 0.3],
    spread: 0.8,
    sweep: 0.8,
    panels: [
      panel({
        bearing: 0,
        height: 20,
        wide: 120,
        high: 70,
        soft: 0.7,
        rgb: [0.05, 0.05, 0.052],
        below: [0.4, 0.4, 0.4],
      }),
      panel({ bearing: -84, height: 22, wide: 84, high: 78, soft: 0.06, rgb: [0.012, 0.012, 0.012] }),
      panel({ bearing: 84, height: 22, wide: 84, high: 78, soft: 0.06, rgb: [0.012, 0.012, 0.012] }),
      panel({
        bearing: -160,
        height: 60,
        wide: 60,
        high: 44,
        soft: 0.06,
        rgb: [4.3, 4.3, 4.3],
        below: [5, 5, 5],
        distanceMm: 520,
      }),
      // the flash behind its cloth
      panel({
        bearing: -160,
        height: 60,
        wide: 54,
        high: 42,
        round: true,
        soft: 1,
        rgb: [5, 5, 5],
        distanceMm: 520,
      }),
      panel({ bearing: -54, height: 34, wide: 9, high: 46, soft: 0.08, rgb: [4.6, 4.6, 4.6] }),
      panel({ bearing: 40, height: 58, wide: 22, high: 16, soft: 0.1, rgb: [1.6, 1.6, 1.6] }),
    ],
  },
  /**
   * An evening at the bench: a round lamp on an arm, 130 mm across and a hand's span away, so that its light falls off over the
   * table; the dusk in a window behind, a shelf, the wall that the lamp lights.
   */
  "lamp-at-hand": {
    zenith: [0.09, 0.08, 0.072],
    horizon: [0.2, 0.18, 0.16],
    floor: [0.13, 0.11, 0.09],
    nadir: [0.05, 0.04, 0.033],
    spread: 0.6,
    sweep: 0.8,
    panels: [
      panel({
        bearing: -75,
        height: 16,
        wide: 96,
        high: 60,
        soft: 0.9,
        rgb: [0.5, 0.41, 0.31],
        below: [0.8, 0.66, 0.5],
      }),
      panel({ bearing: 24, height: 12, wide: 60, high: 52, soft: 0.05, rgb: [0.02, 0.018, 0.016] }),
      panel({
        bearing: 142,
        height: 20,
        wide: 34,
        high: 34,
        panes: [2, 2],
        bar: 0.07,
        soft: 0.02,
        rgb: [0.5, 0.66, 1],
        below: [0.75, 0.8, 0.95],
      }),
      // the inside of its shade, and the frosted bulb in the middle
      panel({
        bearing: -42,
        height: 47,
        wide: 30.3,
        high: 30.3,
        round: true,
        soft: 0.45,
        rgb: [19, 15, 10.2],
        distanceMm: 240,
      }),
      panel({
        bearing: -42,
        height: 47,
        wide: 12,
        high: 12,
        round: true,
        soft: 0.8,
        rgb: [72, 62, 47],
        distanceMm: 240,
      }),
    ],
  },
} as const satisfies Record<string, LightSetting>;

export type LightName = keyof typeof LIGHT_SETTINGS;
export const LIGHT_NAMES = Object.keys(LIGHT_SETTINGS) as readonly LightName[];
