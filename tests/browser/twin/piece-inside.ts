/** A piece with one thing inside, as the shader gets it, and rays that begin in it. */
import { normalize, sub, type Vec3 } from "../../../src/core/geometry/vec.ts";
import type { Random } from "../../../src/core/optics/random.ts";
import { makeScene } from "../../../src/core/optics/scene.ts";
import type { InsideDesign } from "../../../src/core/plan/document.ts";
import { packScene } from "../../../src/render/pack-scene.ts";
import { randomDirection } from "../../core/optics/helpers.ts";
import { RASTERS } from "../look-scenes.ts";
import { halves, NONE, padded, sent } from "./probe.ts";

export const RGB = [0.8, 0.3, 0.2] as const;
export const RGB2 = [0.1, 0.4, 0.9] as const;
export const PLACED = { atMm: [1, -2, 1.5], tiltDeg: 25, turnDeg: 50 } as const;

/** A piece with one thing inside, as the shader gets it. */
export function packedWith(design: InsideDesign) {
  const piece = { diameterMm: 30, glass: "borosilicate", inside: [design] } as const;
  const scene = makeScene({ piece, planes: [], light: { kind: "uniform" }, rasters: RASTERS });
  const packed = packScene(scene);
  const wish = {
    include: ["inside.glsl"],
    defines: packed.defines,
    uniforms: packed.uniforms,
    blocks: { Designs: Array.from(packed.designs) },
    samplers: packed.pictures ? { pictures: sent(packed.pictures) } : NONE,
  };
  return { body: scene.designs[0], wish };
}

/** A ray that begins in the ball and runs near its middle; the rest is for chance. */
export function rayInside(random: Random): readonly number[] {
  const o = randomDirection(random).map((v) => 0.95 * v) as unknown as Vec3;
  const d = normalize(sub(randomDirection(random).map((v) => 0.5 * v) as unknown as Vec3, o));
  return [...o, 0, ...d, 0, ...padded(...halves(random))];
}
