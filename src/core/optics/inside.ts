/** What is in the glass, as the tracer meets it. What each kind is made of stands in `core/inside/`. */
import type { Vec3 } from "../geometry/vec.ts";
import { BODIES } from "../inside/bodies.ts";
import type { DesignHit, SceneDesign } from "../inside/scene-design.ts";
import type { Random } from "./random.ts";

export { bubbleExit, bubbleNormal, isWithin, lengthWithin } from "../inside/hit-ellipsoid.ts";
export { packDesign, packDesigns } from "../inside/pack.ts";
export {
  BACKING,
  BUBBLE,
  CORE,
  type DesignHit,
  type Faces,
  type SceneDesign,
  TINTED_CORE,
} from "../inside/scene-design.ts";

/**
 * Where a ray first meets a design within 0 <= t < tMax; null when it misses. Tinted cores have no surface.
 * @param from the grain it just left (0 for anything but speckles), or -1 when it comes from elsewhere
 * @param random decides whether a half-transparent place of a picture is met; null = it is when more than half of it is there
 */
export const hitDesign = (
  s: SceneDesign,
  o: Vec3,
  d: Vec3,
  tMax: number,
  from: number,
  random: Random | null = null,
): DesignHit | null => BODIES[s.kind].hit(s, o, d, tMax, from, random);
