/**
 * Which planes cut away a place of the ball: asked for every stretch of every ray. A ray within a convex body leaves it by a
 * plane if and only if the place where it would leave the ball lies in that plane's cap, so only the caps about that place have
 * to be asked. The ball is parted into fields, as an octahedron folded flat; each field lists the planes whose caps may reach it.
 */

/** Fields along the side of each half's square; even, so that none lies across an edge of the octahedron. */
export const FIELDS = 24;
const HALF = FIELDS * FIELDS;
export const ALL_FIELDS = 2 * HALF;
/** Rounding may put a place on a border into the field beside it: how far fields reach beyond their own, radians. */
const REACH = 1e-6;

/** The middle of each field as a unit vector, then cosine and sine of how far it reaches around it. */
const FIELD = 5;
const FIELD_NUMBERS = fieldNumbers();

function fieldNumbers(): Float64Array {
  const numbers = new Float64Array(FIELD * ALL_FIELDS);
  for (let field = 0; field < ALL_FIELDS; field++) {
    const side = field < HALF ? 1 : -1;
    const column = field % FIELDS;
    const row = Math.floor((field % HALF) / FIELDS);
    // the octahedron's face goes on beyond its edge: a field that only lies in part on it is taken whole
    const at = (u: number, v: number): number[] => {
      const [x, y] = [(2 * (column + u)) / FIELDS - 1, (2 * (row + v)) / FIELDS - 1];
      const [signX, signY] = [2 * column < FIELDS ? -1 : 1, 2 * row < FIELDS ? -1 : 1];
      const z = side * (1 - signX * x - signY * y);
      const size = Math.hypot(x, y, z);
      return [x / size, y / size, z / size];
    };
    const middle = at(0.5, 0.5);
    const corners = [at(0, 0), at(1, 0), at(0, 1), at(1, 1)];
    const cosines = corners.map((c) => c[0] * middle[0] + c[1] * middle[1] + c[2] * middle[2]);
    const reach = Math.acos(Math.min(1, ...cosines)) + REACH;
    numbers.set([...middle, Math.cos(reach), Math.sin(reach)], FIELD * field);
  }
  return numbers;
}

/** The field that a direction lies in. */
export function fieldAt(x: number, y: number, z: number): number {
  const scale = FIELDS / 2 / (Math.abs(x) + Math.abs(y) + Math.abs(z));
  const column = Math.min(FIELDS - 1, (x * scale + FIELDS / 2) | 0);
  const row = Math.min(FIELDS - 1, (y * scale + FIELDS / 2) | 0);
  return (z < 0 ? HALF : 0) + row * FIELDS + column;
}

/** Planes by field: those of field k are `planes[first[k]] .. planes[first[k + 1] - 1]`, ascending. */
export interface Caps {
  readonly first: Int32Array;
  readonly planes: Int32Array;
}

/** @param planes four numbers each: outward unit normal, distance from the centre of the unit ball */
export function capsOf(planes: Float64Array, planeCount: number): Caps {
  const first = new Int32Array(ALL_FIELDS + 1);
  const sines = Float64Array.from({ length: planeCount }, (_, i) =>
    Math.sqrt(Math.max(0, 1 - planes[4 * i + 3] ** 2)),
  );
  let found = new Int32Array(ALL_FIELDS * 4);
  let count = 0;
  for (let field = 0; field < ALL_FIELDS; field++) {
    first[field] = count;
    if (found.length < count + planeCount) {
      const more = new Int32Array(2 * (count + planeCount));
      more.set(found);
      found = more;
    }
    const f = FIELD * field;
    const [x, y, z] = [FIELD_NUMBERS[f], FIELD_NUMBERS[f + 1], FIELD_NUMBERS[f + 2]];
    const [cosine, sine] = [FIELD_NUMBERS[f + 3], FIELD_NUMBERS[f + 4]];
    for (let i = 0, k = 0; i < planeCount; i++, k += 4) {
      const h = planes[k + 3];
      // a cap and a field that together go round the ball, or the angle between them is less than both
      const isAround = h < -cosine;
      if (isAround || planes[k] * x + planes[k + 1] * y + planes[k + 2] * z > h * cosine - sines[i] * sine)
        found[count++] = i;
    }
  }
  first[ALL_FIELDS] = count;
  return { first, planes: found };
}
