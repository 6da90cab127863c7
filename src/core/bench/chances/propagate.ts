/**
 * The same spread in closed form, for small errors: how much each setting moves the gap of a pair. Tells which one matters most.
 *
 * gap = R (delta - rho_a - rho_b), cos rho = h / R, so d gap / d h = 1 / sin rho on each side. The ellipsoid's support, to
 * first order a quadratic form n.diag(r).n in a random rotation, has covariance V P2(cos delta) between two directions, with
 * V = (sum r_i^2) / 5 + 2 (sum r_i r_j) / 15 - (sum r_i / 3)^2. Run-out e in random direction gives e^2 / 2 times the
 * product of the normals' parts square to the axis.
 */
import { angularRadius } from "../../geometry/circles.ts";
import { sliceFacet, widthOf } from "../../geometry/slice.ts";
import { addScaled, angleBetween, dot, scale, type Vec3 } from "../../geometry/vec.ts";
import type { PlannedPair, Simulation } from "./simulate.ts";
import type { Source } from "./spread.ts";

const DEG = Math.PI / 180;
/** Step for slopes of width against depth, unit sphere. */
const STEP = 1e-6;

/** How a normal moves for a radian of arm angle, and of azimuth. */
function normalSlopes({ solved }: Simulation, k: number): { arm: Vec3; turn: Vec3 } {
  const { frame, armAngleDeg, tierIndex } = solved.facets[k];
  const isFront = solved.plan.tiers[tierIndex].side === "front";
  // A flat at the pole has no azimuth, and is set square by the guide.
  if (armAngleDeg === 90) return { arm: [0, 0, 0], turn: [0, 0, 0] };
  return {
    arm: scale(frame.meridian, isFront ? 1 : -1),
    turn: scale(frame.across, Math.cos(armAngleDeg * DEG)),
  };
}

/** Slope of the angle between two unit vectors when the first moves by `move`: -(move . nb) / sin delta. */
const deltaSlope = (move: Vec3, other: Vec3, sinDelta: number): number => -dot(move, other) / sinDelta;

/** Variance of the gap from errors of the normals, mm2. */
function turnVariances(sim: Simulation, { a, b }: PlannedPair): { armAngle: number; stopPlay: number } {
  const { solved, spread } = sim;
  const [na, nb] = [solved.planes[a].n, solved.planes[b].n];
  const sinDelta = Math.sin(angleBetween(na, nb));
  if (sinDelta === 0) return { armAngle: 0, stopPlay: 0 };
  const [ma, mb] = [normalSlopes(sim, a), normalSlopes(sim, b)];
  const armA = deltaSlope(ma.arm, nb, sinDelta);
  const armB = deltaSlope(mb.arm, na, sinDelta);
  const isOneTier = solved.facets[a].tierIndex === solved.facets[b].tierIndex;
  const arm2 = isOneTier ? (armA + armB) ** 2 : armA ** 2 + armB ** 2;
  const stop2 = deltaSlope(ma.turn, nb, sinDelta) ** 2 + deltaSlope(mb.turn, na, sinDelta) ** 2;
  const R2 = solved.radiusMm ** 2;
  return {
    armAngle: R2 * arm2 * (spread.armDeg * DEG) ** 2,
    stopPlay: R2 * stop2 * (spread.stopDeg * DEG) ** 2,
  };
}

/** Variance of an ellipsoid's support over random rotations, mm2. */
export function supportVariance(r: readonly number[]): number {
  const squares = r[0] ** 2 + r[1] ** 2 + r[2] ** 2;
  const products = r[0] * r[1] + r[1] * r[2] + r[2] * r[0];
  return squares / 5 + (2 * products) / 15 - ((r[0] + r[1] + r[2]) / 3) ** 2;
}

/** Variance of the gap from the skin and the dop when stopping at a fixed depth, mm2. */
function skinVariances(sim: Simulation, { a, b }: PlannedPair): { outOfRound: number; runOut: number } {
  const { solved, spread } = sim;
  const [pa, pb] = [solved.planes[a], solved.planes[b]];
  const [sa, sb] = [Math.sin(angularRadius(pa)), Math.sin(angularRadius(pb))];
  const cosDelta = dot(pa.n, pb.n);
  const legendre = (3 * cosDelta ** 2 - 1) / 2;
  const support = supportVariance(spread.semiAxesMm);
  const outOfRound = support * (1 / sa ** 2 + 1 / sb ** 2 + (2 * legendre) / (sa * sb));
  const sideOf = (k: number) => solved.plan.tiers[solved.facets[k].tierIndex].side;
  const level = (n: Vec3): Vec3 => addScaled(n, [0, 0, 1], -n[2]);
  const [la, lb] = [level(pa.n), level(pb.n)];
  const [ea, eb] = [spread.runOutMm[sideOf(a)], spread.runOutMm[sideOf(b)]];
  const common = sideOf(a) === sideOf(b) ? (2 * ea * eb * dot(la, lb)) / (sa * sb) : 0;
  const runOut = ((ea ** 2 * dot(la, la)) / sa ** 2 + (eb ** 2 * dot(lb, lb)) / sb ** 2 + common) / 2;
  return { outOfRound, runOut };
}

/** How much wider facet k gets for each unit of depth, as the work stands when it is stopped; 0 when depth doesn't widen it. */
function widening(sim: Simulation, k: number): number {
  const { solved, waitingH } = sim;
  const { tierIndex } = solved.facets[k];
  const { first, count } = solved.tiers[tierIndex];
  const around = solved.planes
    .slice(0, first + count)
    .map((plane, j) => (j > k ? { n: plane.n, h: waitingH[tierIndex] } : plane));
  const widthAt = (h: number) =>
    widthOf(
      sliceFacet(k, around.with(k, { n: solved.planes[k].n, h }), (j) => j > k && waitingH[tierIndex] >= 1),
    );
  const { h } = solved.planes[k];
  return (widthAt(h - STEP) - widthAt(h + STEP)) / (2 * STEP);
}

/** Variances of a pair's gap by source, mm2; those that don't apply to this way of stopping are 0. */
export function gapVariances(sim: Simulation, pair: PlannedPair): Readonly<Record<Source, number>> {
  const { solved, spread, stopBy } = sim;
  const turns = turnVariances(sim, pair);
  const slopes = [pair.a, pair.b].map((k) => 1 / Math.sin(angularRadius(solved.planes[k])));
  const squares = slopes[0] ** 2 + slopes[1] ** 2;
  if (stopBy === "depth")
    return { ...turns, ...skinVariances(sim, pair), depth: squares * spread.depthMm ** 2, width: 0 };
  const width = [pair.a, pair.b].reduce((sum, k, i) => {
    const slope = widening(sim, k);
    return sum + (slope > 0 ? (slopes[i] * spread.widthMm) / slope : 0) ** 2;
  }, 0);
  return { ...turns, width, depth: 0, outOfRound: 0, runOut: 0 };
}

/** Root mean square over all planned pairs of what each source moves their gaps, mm, greatest first. */
export function sourcesByWeight(
  sim: Simulation,
): readonly { readonly source: Source; readonly gapSdMm: number }[] {
  const all = sim.pairs.map((pair) => gapVariances(sim, pair));
  const sources: readonly Source[] = ["armAngle", "stopPlay", "depth", "width", "outOfRound", "runOut"];
  return sources
    .map((source) => ({
      source,
      gapSdMm: Math.sqrt(all.reduce((sum, v) => sum + v[source], 0) / Math.max(1, all.length)),
    }))
    .sort((x, y) => y.gapSdMm - x.gapSdMm);
}
