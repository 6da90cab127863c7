/**
 * In which order the strata of the spectrum stand in their texture: fours that together are nearly white. A four shares one
 * ray (see `pass.ts`), so that what the ray finds comes in its own colours and hardly any of chance.
 */
import { STRATA, type Stratum } from "../core/optics/spectrum.ts";

export const WAVES_A_RAY = 4;
const GROUPS = STRATA / WAVES_A_RAY;
/** White counts for more than any other colour: it is what lamps and windows send. */
const WHITE_COUNTS = 4;

/** How far what a group makes of red, green, blue and white is from them: summed squares. */
function colourCast(group: readonly Stratum[]): number {
  let cast = 0;
  for (let c = 0; c < 3; c++) {
    let white = 0;
    for (let k = 0; k < 3; k++) {
      const seen = group.reduce((sum, s) => sum + s.weight[c] * s.basis[k], 0) / WAVES_A_RAY;
      cast += (seen - (c === k ? 1 : 0)) ** 2;
      white += seen;
    }
    cast += WHITE_COUNTS * (white - 1) ** 2;
  }
  return cast;
}

const orders = new WeakMap<readonly Stratum[], readonly number[]>();

/** Strata in the order of the texture: places 4 g .. 4 g + 3 are one group. Computed once, some tens of milliseconds. */
export function waveOrder(strata: readonly Stratum[]): readonly number[] {
  const known = orders.get(strata) ?? balanced(strata);
  orders.set(strata, known);
  return known;
}

/** Begins with groups spread evenly over the spectrum and swaps pairs as long as that helps. */
function balanced(strata: readonly Stratum[]): number[] {
  const order = Array.from(
    { length: STRATA },
    (_, place) => (place % WAVES_A_RAY) * GROUPS + Math.floor(place / WAVES_A_RAY),
  );
  const castOf = (group: number): number =>
    colourCast(order.slice(group * WAVES_A_RAY, (group + 1) * WAVES_A_RAY).map((j) => strata[j]));
  const swap = (a: number, b: number) => {
    [order[a], order[b]] = [order[b], order[a]];
  };
  for (let hasChanged = true; hasChanged; ) {
    hasChanged = false;
    for (let a = 0; a < STRATA; a++)
      for (let b = a + 1; b < STRATA; b++) {
        const [ga, gb] = [Math.floor(a / WAVES_A_RAY), Math.floor(b / WAVES_A_RAY)];
        if (ga === gb) continue;
        const before = castOf(ga) + castOf(gb);
        swap(a, b);
        if (castOf(ga) + castOf(gb) < before - 1e-9) hasChanged = true;
        else swap(a, b);
      }
  }
  return order;
}
