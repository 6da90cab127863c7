/**
 * The bodies inside as a drawing shows them, in a design's own frame: surfaces over a grid, or the name of a round shape.
 * What irregularity does to them is left to the traced picture.
 */
import type { Vec3 } from "../geometry/vec.ts";
import type { SceneDesign } from "./scene-design.ts";

/** A surface over u and v in 0..1, both ends included, in so many steps of each. */
export interface Grid {
  readonly nu: number;
  readonly nv: number;
  readonly at: (u: number, v: number) => Vec3;
}
/** What every library for drawing has: an ellipsoid by its halves, the ball beyond a plane, strewn grains, a round sheet. */
export type RoundShape = "ellipsoid" | "cap" | "grains" | "disc";
export type Drawn = RoundShape | ((design: SceneDesign) => readonly Grid[]);

const ROUND = 120;

/** A band twisted about its own z axis. */
const twistedBand = (halfWidth: number, halfLength: number, rate: number): Grid => ({
  nu: 64,
  nv: 6,
  at: (u, v) => {
    const z = (2 * u - 1) * halfLength;
    const x = (2 * v - 1) * halfWidth;
    return [x * Math.cos(rate * z), x * Math.sin(rate * z), z];
  },
});
export const drawnRibbon = ({ size, extra }: SceneDesign): Grid[] => [twistedBand(size[0], size[2], extra)];
export const drawnMeltedRibbon = ({ size, more }: SceneDesign): Grid[] => [
  twistedBand(size[0], size[1], more[2]),
];

/** A bowl whose rim rises and falls once a petal. */
export const drawnPetals = ({ size, extra }: SceneDesign): Grid[] => [
  {
    nu: 16,
    nv: ROUND,
    at: (u, v) => {
      const angle = 2 * Math.PI * v;
      const reach = size[0] * (0.62 + 0.38 * Math.abs(Math.cos((extra * angle) / 2)));
      return [u * reach * Math.cos(angle), u * reach * Math.sin(angle), size[1] * (u * u - 0.5)];
    },
  },
];

export const drawnMeltedPetals = ({ size, more }: SceneDesign): Grid[] => [
  {
    nu: 16,
    nv: ROUND,
    at: (u, v) => {
      const angle = 2 * Math.PI * v;
      const reach = u * size[0] * (0.5 + 0.5 * Math.abs(Math.cos((more[2] * angle) / 2)));
      const level = more[4] * ((reach / size[0]) ** 2 - 0.5);
      return [reach * Math.cos(angle), reach * Math.sin(angle), level];
    },
  },
];

/** The strands of a cane twist, each a rope along its helix. */
export const drawnTwist = ({ size, more }: SceneDesign): Grid[] => {
  const [radius, half, thick] = size;
  const [, , rate, strands, taper] = more;
  return Array.from({ length: strands }, (_, k) => ({
    nu: 72,
    nv: 8,
    at: (u, v) => {
      const z = (2 * u - 1) * half;
      const narrow = 1 - taper * (1 - u);
      const [angle, round] = [rate * z + (2 * Math.PI * k) / strands, 2 * Math.PI * v];
      const out = narrow * (radius - 0.5 * thick + 0.5 * thick * Math.cos(round));
      const lift = narrow * 0.5 * thick * Math.sin(round);
      return [out * Math.cos(angle), out * Math.sin(angle), z + lift];
    },
  }));
};

/** The arms of a swirl, each a strip along its winding. */
export const drawnSwirl = ({ size, more }: SceneDesign): Grid[] => {
  const [, , arms, wind, depth] = more;
  return Array.from({ length: arms }, (_, k) => ({
    nu: 32,
    nv: 4,
    at: (u, v) => {
      const wide = 0.3 * ((2 * Math.PI) / arms) * u * (1 - 0.7 * u) + (0.5 * size[2]) / Math.max(size[2], u);
      const angle = (2 * Math.PI * k) / arms + wind * (1 - u) + (2 * v - 1) * Math.min(wide, Math.PI / arms);
      const r = u * size[0];
      return [r * Math.cos(angle), r * Math.sin(angle), depth * (u - 0.5)];
    },
  }));
};
