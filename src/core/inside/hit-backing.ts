/** How light meets a backing: a plane, and all that lies beyond it. */
import { dot, type Vec3 } from "../geometry/vec.ts";
import type { Hit } from "./scene-design.ts";

export const hitBacking: Hit = (s, o, d, tMax, from) => {
  if (from >= 0) return null;
  const n: Vec3 = [-s.axisZ[0], -s.axisZ[1], -s.axisZ[2]];
  const depth = dot(s.axisZ, o) - s.size[0];
  if (depth >= 0) return { t: 0, n: [-d[0], -d[1], -d[2]], rgb: s.rgb, grain: 0 };
  const towards = dot(s.axisZ, d);
  if (towards <= 0) return null;
  const t = -depth / towards;
  return t < tMax ? { t, n, rgb: s.rgb, grain: 0 } : null;
};
