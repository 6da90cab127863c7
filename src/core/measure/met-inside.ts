/** Where straight rays meet what is inside the glass: balls and ellipsoids as plain numbers, all other designs one by one. */
import { SKIN } from "../optics/body.ts";
import { BACKING, BUBBLE, CORE, hitDesign, type SceneDesign, TINTED_CORE } from "../optics/inside.ts";

const isRound = ({ kind }: SceneDesign): boolean => kind === CORE || kind === BUBBLE || kind === TINTED_CORE;
const isBall = ({ size }: SceneDesign): boolean => size[0] === size[1] && size[1] === size[2];

/** Numbers a ball takes: centre, radius squared. */
const BALL = 4;
/** Numbers an ellipsoid takes: centre, then the three axes over their half lengths. */
const STRIDE = 12;

export class MetInside {
  readonly isEmpty: boolean;
  /** Centre and radius squared where one ball is all there is. */
  readonly onlyBall: Float64Array | null;
  private readonly balls: Float64Array;
  private readonly ellipsoids: Float64Array;
  private readonly others: readonly SceneDesign[];

  /** @param designs of a scene; a backing lies under the glass and is met by none */
  constructor(designs: readonly SceneDesign[]) {
    const met = designs.filter(({ kind }) => kind !== BACKING);
    this.isEmpty = met.length === 0;
    const round = met.filter(isRound);
    this.balls = Float64Array.from(
      round.filter(isBall).flatMap(({ centre, size }) => [...centre, size[0] * size[0]]),
    );
    this.ellipsoids = Float64Array.from(
      round
        .filter((design) => !isBall(design))
        .flatMap(({ centre, axisX, axisY, axisZ, size }) => [
          ...centre,
          ...[axisX, axisY, axisZ].flatMap((axis, k) => axis.map((a) => a / size[k])),
        ]),
    );
    this.others = met.filter((design) => !isRound(design));
    this.onlyBall = met.length === 1 && this.balls.length === BALL ? this.balls : null;
  }

  /** Nothing, or one ball. */
  get isSimple(): boolean {
    return this.isEmpty || this.onlyBall !== null;
  }

  /** Distance within `most` to the nearest design, or -1. A start within one meets it at once. @param dx of a unit direction */
  distance(px: number, py: number, pz: number, dx: number, dy: number, dz: number, most: number): number {
    const { balls, ellipsoids, others } = this;
    let nearest = most;
    let isMet = false;
    for (let k = 0; k < balls.length; k += BALL) {
      const qx = px - balls[k];
      const qy = py - balls[k + 1];
      const qz = pz - balls[k + 2];
      const b = qx * dx + qy * dy + qz * dz;
      const room = b * b - qx * qx - qy * qy - qz * qz + balls[k + 3];
      if (room <= 0) continue;
      const root = Math.sqrt(room);
      const enter = -b - root;
      if (root <= b || enter >= nearest) continue;
      nearest = Math.max(0, enter);
      isMet = true;
    }
    for (let k = 0; k < ellipsoids.length; k += STRIDE) {
      const qx = px - ellipsoids[k];
      const qy = py - ellipsoids[k + 1];
      const qz = pz - ellipsoids[k + 2];
      let a = 0;
      let b = 0;
      let c = -1;
      for (let axis = k + 3; axis < k + STRIDE; axis += 3) {
        const place = ellipsoids[axis] * qx + ellipsoids[axis + 1] * qy + ellipsoids[axis + 2] * qz;
        const along = ellipsoids[axis] * dx + ellipsoids[axis + 1] * dy + ellipsoids[axis + 2] * dz;
        a += along * along;
        b += place * along;
        c += place * place;
      }
      const room = b * b - a * c;
      if (room <= 0) continue;
      const root = Math.sqrt(room);
      const enter = (-b - root) / a;
      if (root <= b || enter >= nearest) continue;
      nearest = Math.max(0, enter);
      isMet = true;
    }
    for (const design of others) {
      const hit = hitDesign(design, [px, py, pz], [dx, dy, dz], nearest, SKIN - 1);
      if (!hit) continue;
      nearest = hit.t;
      isMet = true;
    }
    return isMet ? nearest : -1;
  }
}
