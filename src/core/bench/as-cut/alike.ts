/**
 * Facets of a tier that stand alike: a turn of the whole piece about its axis brings one to the other, all planes that
 * are cut coming upon each other too. What is true of one is true of all, at any arm angle and depth of their tier.
 */
import { cosDeg, type Plane, sinDeg } from "../../geometry/plane.ts";

export interface Alike {
  /** One facet of the class, as a position in its tier. */
  readonly k: number;
  /** How many facets are in the class. */
  readonly count: number;
}

/** Two places that agree in so many digits are one: 1e-9 of the radius. */
const DIGITS = 9;
const rounded = (x: number): string => {
  const text = x.toFixed(DIGITS);
  return Number(text) === 0 ? "0" : text;
};

/** Everything around the axis as seen from one azimuth, in an order that doesn't depend on numbering. */
function seenFrom(azimuthDeg: number, azimuthsDeg: readonly number[], earlier: readonly Plane[]): string {
  const [c, s] = [cosDeg(azimuthDeg), sinDeg(azimuthDeg)];
  const planes = earlier.map(({ n, h }) =>
    [c * n[0] + s * n[1], c * n[1] - s * n[0], n[2], h].map(rounded).join(" "),
  );
  const own = azimuthsDeg.map((t) => [cosDeg(t - azimuthDeg), sinDeg(t - azimuthDeg)].map(rounded).join(" "));
  return [...planes.sort(), "own", ...own.sort()].join(";");
}

/** The classes of a tier's facets, by first member. Coincident facets, of which later ones are swallowed, are never alike. */
export function alikeFacets(azimuthsDeg: readonly number[], earlier: readonly Plane[]): readonly Alike[] {
  const classes = new Map<string, { k: number; count: number }>();
  azimuthsDeg.forEach((azimuth, k) => {
    const isRepeat = azimuthsDeg.slice(0, k).includes(azimuth);
    const key = isRepeat ? `repeat ${k}` : seenFrom(azimuth, azimuthsDeg, earlier);
    const known = classes.get(key);
    if (known) known.count++;
    else classes.set(key, { k, count: 1 });
  });
  return [...classes.values()];
}
