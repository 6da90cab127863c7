/**
 * Which changes might mend which finding, the smallest and likeliest first. Nothing here is a promise: each way is tried
 * by the caller. Ways come from generators, null being a look that led nowhere, so that long searches can be left.
 */
import type { DepthRule, Plan, Tier } from "../plan/document.ts";
import type { PlanFinding, PlanFindingCode } from "../plan/finding.ts";
import { evenCounts, nearestStop, stopsOf, wrapDeg, zeroOf } from "../plan/place.ts";
import { isMeeting, withAmount } from "../plan/rules/amounts.ts";
import { snapRules } from "../plan/snaps.ts";
import { solvePlan, toleranceOf } from "../plan/solve.ts";
import { lostByEdit, type Setting, settingsChanged } from "./findings-edit-cost.ts";
import { meetsIn, onWheel, wheelsThatKeepAll } from "./findings-wheel-cost.ts";
import { leastChanges } from "./mend-search.ts";
import type { MendStep, Way } from "./mends.ts";
import { reportAtOnce } from "./report.ts";
import { wrongTier } from "./wrong-tier.ts";

type Ways = Generator<Way | null>;

/** What a way of mending looks at. */
interface Case<C extends PlanFindingCode = PlanFindingCode> {
  readonly plan: Plan;
  readonly finding: PlanFinding<C>;
  readonly tier: Tier;
  readonly index: number;
  /** As solved. */
  readonly depthMm: number;
  /** The plan before its last edit, where there was one. */
  readonly planBefore: Plan | null;
}

/** As a fraction of the radius. */
const toleranceIn = (plan: Plan): number => toleranceOf(plan) / (plan.piece.diameterMm / 2);

/** Changes of angle and depth looked for, and the grain in which they are offered: what an arm and a caliper can show. */
const ANGLE = { step: 1.5, grain: 0.1, reach: 24 } as const;
const DEPTH_GRAIN_MM = 0.01;
/** Depths are looked for in steps of this part of the radius, as far as a third of it. */
const DEPTH_STEP = 1 / 60;
const DEPTH_REACH = 1 / 3;
const FEWEST = 3;
const MOST = 120;

/** All ways worth trying for one finding; none where its tier is gone. */
export function* mendWays<C extends PlanFindingCode>(
  plan: Plan,
  finding: PlanFinding<C>,
  planBefore: Plan | null = null,
): Ways {
  const index = plan.tiers.findIndex((t) => t.id === tierOf(plan, finding));
  if (index < 0) return;
  const depthMm = solvePlan(plan).tiers[index].depthMm;
  const here: Case<C> = { plan, finding, tier: plan.tiers[index], index, depthMm, planBefore };
  for (const way of WAYS[finding.code]) yield* way(here);
}

/** A finding about the whole piece is mended at its deepest tier. */
function tierOf(plan: Plan, finding: Pick<PlanFinding, "tier">): string | undefined {
  if (finding.tier !== undefined) return finding.tier;
  const tiers = [...solvePlan(plan).tiers].sort((a, b) => b.depthMm - a.depthMm);
  return tiers[0]?.tierId;
}

const WAYS: { readonly [C in PlanFindingCode]: readonly ((here: Case<C>) => Ways)[] } = {
  uneven: [evenCountWays],
  "start-moved": [placedStartWays],
  "edit-splits": [keptStartWays, keptAngleWays, keptWheelWays, putBackWays],
  "wheel-splits": [keepingStartWays, keepingWheelWays, evenCountWays],
  duplicate: [wrongTierWays, halfTurnWays, removeWays],
  "near-duplicate": [wrongTierWays, removeWays, halfTurnWays, depthWays],
  "rule-unmet": [wrongTierWays, unmetWays, angleForRuleWays, keepDepthWays],
  "corners-left": [countOfNamedWays],
  overshoot: [wrongTierWays, startWays, countOfNamedWays, angleWays],
  swallowed: [wrongTierWays, depthWays, removeWays],
  lost: [wrongTierWays, depthWays, laterShallowerWays, removeWays],
  sliver: [depthWays, meetRuleWays, removeWays],
  "short-edge": [meetRuleWays, depthWays],
  "near-miss": [cornerStartWays, meetRuleWays, depthWays, angleWays],
  "skin-between": [closeWays, meetRuleWays],
  "under-dop": [depthWays, angleWays, dopWays],
  "inside-broken": [clearDepthWays, angleWays],
  "inside-thin": [clearDepthWays, angleWays],
  "inside-outside": [],
  "picture-missing": [],
  vanished: [wrongTierWays, depthWays, removeWays],
};

const tierStep = (tier: Tier, change: Partial<Omit<Tier, "id">>): MendStep => ({
  kind: "tier",
  tierId: tier.id,
  change,
});

const ruleWay = (tier: Tier, depth: DepthRule): Way => ({
  change: { to: "rule", tierId: tier.id, depth },
  steps: [tierStep(tier, { depth })],
});

const depthWay = ({ tier, depthMm }: Case, mm: number): Way => ({
  change: { to: "depth", tierId: tier.id, fromMm: depthMm, mm },
  steps: [tierStep(tier, { depth: { rule: "depth", mm } })],
});

const angleWay = (tier: Tier, deg: number): Way => ({
  change: { to: "angle", tierId: tier.id, fromDeg: tier.armAngleDeg, deg },
  steps: [tierStep(tier, { armAngleDeg: deg })],
});

const startWay = (plan: Plan, tier: Tier, deg: number): Way => {
  const stops = stopsOf(plan, tier.side);
  const stop = stops === null ? null : nearestStop(deg, stops, zeroOf(plan, tier.side));
  return {
    change: { to: "start", tierId: tier.id, deg, stop },
    steps: [tierStep(tier, { startDeg: deg })],
  };
};

/** Whether the finding is gone when the tier is changed so. */
const isGone =
  ({ plan, finding, tier }: Case, change: (x: number) => Partial<Tier>) =>
  (x: number): boolean => {
    const tiers = plan.tiers.map((t) => (t.id === tier.id ? { ...t, ...change(x) } : t));
    return !reportAtOnce({ ...plan, tiers }).findings.some(
      (f) => f.code === finding.code && f.tier === finding.tier,
    );
  };

/** The least change of the tier that is wrong, whichever tier the finding shows up at. */
function* wrongTierWays({ plan }: Case): Ways {
  const fix = yield* wrongTier(plan);
  if (!fix) return;
  const { tier, change } = fix;
  const way = "armAngleDeg" in change ? angleWay(tier, change.armAngleDeg) : ruleWay(tier, change.depth);
  yield { ...way, isCause: true };
}

/** The nearest counts that the wheel divides, below and above. */
function* evenCountWays({ plan, tier }: Case): Ways {
  const stops = stopsOf(plan, tier.side);
  if (stops === null) return;
  const counts = evenCounts(stops).filter((n) => n >= FEWEST && n <= MOST);
  const nearest = [...counts].sort((a, b) => Math.abs(a - tier.count) - Math.abs(b - tier.count));
  for (const count of nearest.slice(0, 3)) {
    yield {
      change: { to: "count", tierId: tier.id, count },
      steps: [tierStep(tier, { count })],
    };
  }
}

function* placedStartWays({ plan, tier, finding }: Case<"start-moved">): Ways {
  yield startWay(plan, tier, finding.data.placedDeg);
}

/** The start and the wheels that the finding names: all meets stand again. */
function* keepingStartWays({ plan, tier, finding }: Case<"wheel-splits">): Ways {
  const { startDeg } = finding.data;
  if (startDeg !== null) yield startWay(plan, tier, startDeg);
}

function* keepingWheelWays({ plan, finding }: Case<"wheel-splits">): Ways {
  yield* wheelWays(plan, finding.data.wheels);
}

function* wheelWays(plan: Plan, wheels: readonly number[]): Ways {
  for (const stops of wheels)
    yield { change: { to: "wheel", stops }, steps: [{ kind: "rig", rig: onWheel(plan, stops).rig }] };
}

/** Whether all that met before the last edit meets in another plan too. */
function keepsAll({ planBefore }: Case): (plan: Plan) => boolean {
  const then = planBefore && meetsIn(planBefore, toleranceIn(planBefore));
  if (!then) return () => false;
  return (plan) => {
    const now = meetsIn(plan, toleranceIn(plan));
    return now !== null && lostByEdit(then, now, toleranceIn(plan)).length === 0;
  };
}

const withTier = (plan: Plan, index: number, change: Partial<Tier>): Plan => ({
  ...plan,
  tiers: plan.tiers.with(index, { ...plan.tiers[index], ...change }),
});

/** The tier as it was before the last edit, and what of it was changed. */
function edited({ planBefore, tier }: Case): { was: Tier; settings: readonly Setting[] } | null {
  const was = planBefore?.tiers.find(({ id }) => id === tier.id);
  return was ? { was, settings: settingsChanged(was, tier) } : null;
}

/** The start nearest to the new one, on the wheel's stops, with which all that met still does. */
function* keptStartWays(here: Case): Ways {
  const { plan, tier, index } = here;
  const stops = stopsOf(plan, tier.side);
  if (stops === null || !edited(here)?.settings.includes("startDeg")) return;
  const zero = zeroOf(plan, tier.side);
  const now = nearestStop(tier.startDeg, stops, zero);
  const isKept = keepsAll(here);
  for (let k = 1; k <= stops / tier.count; k++) {
    for (const turn of [k, -k]) {
      const startDeg = wrapDeg(zero + (360 * (now + turn)) / stops);
      yield null;
      if (!isKept(withTier(plan, index, { startDeg }))) continue;
      yield startWay(plan, tier, startDeg);
      return;
    }
  }
}

/** The angle nearest to the new one with which all that met still does: between it and the old one. */
function* keptAngleWays(here: Case): Ways {
  const { plan, tier, index } = here;
  const change = edited(here);
  if (!change?.settings.includes("armAngleDeg")) return;
  const isKept = keepsAll(here);
  const reach = Math.abs(change.was.armAngleDeg - tier.armAngleDeg);
  const search = { from: tier.armAngleDeg, least: 0, most: 90, step: reach / 8, grain: ANGLE.grain, reach };
  yield null;
  const [nearest] = leastChanges(search, (armAngleDeg) => isKept(withTier(plan, index, { armAngleDeg })));
  if (nearest !== undefined) yield angleWay(tier, nearest);
}

/** The wheel as it was, and others on which all that met still does, where the edit took another one. */
function* keptWheelWays(here: Case): Ways {
  const { plan, planBefore } = here;
  if (!planBefore || JSON.stringify(planBefore.rig) === JSON.stringify(plan.rig)) return;
  const { wheelStops } = planBefore.rig;
  if (wheelStops !== null && wheelStops !== plan.rig.wheelStops)
    yield {
      change: { to: "wheel", stops: wheelStops },
      steps: [{ kind: "rig", rig: planBefore.rig }],
    };
  yield* wheelWays(plan, wheelsThatKeepAll(plan));
}

/** What the last edit changed of the tier, put back one by one. */
function* putBackWays(here: Case): Ways {
  const { plan, tier } = here;
  const change = edited(here);
  if (!change) return;
  const { was, settings } = change;
  if (settings.includes("startDeg")) yield startWay(plan, tier, was.startDeg);
  if (settings.includes("armAngleDeg")) yield angleWay(tier, was.armAngleDeg);
  if (!settings.includes("depth")) return;
  yield was.depth.rule === "depth" ? depthWay(here, was.depth.mm) : ruleWay(tier, was.depth);
}

/** Facets into the middle between where they are now. */
function* halfTurnWays({ plan, tier }: Case): Ways {
  yield startWay(plan, tier, wrapDeg(tier.startDeg + 180 / tier.count));
}

function* removeWays({ tier }: Case): Ways {
  yield {
    change: { to: "remove", tierId: tier.id },
    steps: [{ kind: "remove-tier", tierId: tier.id }],
  };
}

/** What the rule asks, made possible: the size it can have, or corners for the tier that it names. */
function* unmetWays({ plan, tier, finding }: Case<"rule-unmet">): Ways {
  const { why, got, other: named } = finding.data;
  const other = plan.tiers.find((t) => t.id === named);
  if (other && (why === "no-corners" || why === "open-below" || why === "stays-open")) {
    yield ruleWay(other, { rule: "touch" });
  }
  if (got === null || got <= 0) return;
  const mm = Math.floor(got / DEPTH_GRAIN_MM) * DEPTH_GRAIN_MM;
  if (!isMeeting(tier.depth)) yield ruleWay(tier, withAmount(tier.depth, Number(mm.toFixed(2))));
}

/** The nearest angles at which the tier's own rule, or the one given, can be met. */
function* angleForRuleWays({ plan, tier, index }: Case, depth: DepthRule = tier.depth): Ways {
  const earlier = plan.tiers.slice(0, index);
  const isMet = (armAngleDeg: number) =>
    solvePlan({ ...plan, tiers: [...earlier, { ...tier, depth, armAngleDeg }] }).tiers[index].met;
  const search = { from: tier.armAngleDeg, least: 0, most: 90, ...ANGLE };
  for (const deg of leastChanges(search, isMet)) {
    if (depth === tier.depth) yield angleWay(tier, deg);
    else {
      yield {
        change: { to: "rule", tierId: tier.id, depth, deg },
        steps: [tierStep(tier, { depth, armAngleDeg: deg })],
      };
    }
  }
}

/** The depth that is drawn in place of what the rule can't do. */
function* keepDepthWays(here: Case): Ways {
  const mm = Number(here.depthMm.toFixed(2));
  if (mm > 0) yield depthWay(here, mm);
}

function* depthWays(here: Case): Ways {
  const R = here.plan.piece.diameterMm / 2;
  const search = {
    from: here.depthMm,
    step: DEPTH_STEP * R,
    grain: DEPTH_GRAIN_MM,
    reach: DEPTH_REACH * R,
    least: DEPTH_GRAIN_MM,
    most: R,
  };
  yield null;
  for (const mm of leastChanges(
    search,
    isGone(here, (mm) => ({ depth: { rule: "depth", mm } })),
  )) {
    yield depthWay(here, mm);
  }
}

function* angleWays(here: Case): Ways {
  const search = { from: here.tier.armAngleDeg, least: 0, most: 90, ...ANGLE };
  yield null;
  for (const deg of leastChanges(
    search,
    isGone(here, (armAngleDeg) => ({ armAngleDeg })),
  )) {
    yield angleWay(here.tier, deg);
  }
}

/** Other starts on the wheel's stops, the nearest first, within one step of the tier. */
function* startWays(here: Case): Ways {
  const { plan, tier } = here;
  const step = 360 / (stopsOf(plan, tier.side) ?? 360);
  const isBetter = isGone(here, (startDeg) => ({ startDeg }));
  for (let k = 1; k * step <= 360 / tier.count; k++) {
    for (const turn of [k * step, -k * step]) {
      const deg = wrapDeg(tier.startDeg + turn);
      yield null;
      if (isBetter(deg)) {
        yield startWay(plan, tier, deg);
        return;
      }
    }
  }
}

/** For a tier that should come to corners and passes some by: a start at which it doesn't. */
function* cornerStartWays(here: Case): Ways {
  if (here.tier.depth.rule === "corners") yield* startWays(here);
}

/** As many facets as the tier whose corners they come to, or a part of them. */
function* countOfNamedWays({ plan, tier, finding }: Case<"overshoot" | "corners-left">): Ways {
  const other = plan.tiers.find((t) => t.id === finding.data.of);
  if (!other) return;
  for (const count of [other.count, other.count / 2]) {
    if (!Number.isInteger(count) || count < 1) continue;
    for (const startDeg of [tier.startDeg, wrapDeg(other.startDeg + 180 / other.count)]) {
      yield {
        change: { to: "count", tierId: tier.id, count },
        steps: [tierStep(tier, { count, startDeg })],
      };
    }
  }
}

/** Rules by which the tier would meet something at the angle that it has. */
function* meetRuleWays({ plan, tier, index }: Case): Ways {
  for (const { depth } of snapRules(plan, index)) yield ruleWay(tier, depth);
}

/** Closing the band to the other tier: at this angle, or at the nearest at which it can be done. */
function* closeWays(here: Case<"skin-between">): Ways {
  const to = here.finding.data.tiers.find((id) => id !== here.tier.id);
  if (to === undefined) return;
  const { tier } = here;
  yield ruleWay(tier, { rule: "close", to });
  yield* angleForRuleWays(here, { rule: "close", to });
}

/** Later tiers that grind the tier's facets away, each a little shallower. */
function* laterShallowerWays(here: Case): Ways {
  const solved = solvePlan(here.plan);
  for (let i = here.index + 1; i < here.plan.tiers.length; i++) {
    const tier = here.plan.tiers[i];
    yield* depthWays({ ...here, tier, index: i, depthMm: solved.tiers[i].depthMm });
  }
}

/** The depth that leaves enough glass over the inside, as the finding says. */
function* clearDepthWays(here: Case<"inside-broken" | "inside-thin">): Ways {
  const clears = here.finding.data.depthThatClearsMm;
  const mm = Math.floor(clears / DEPTH_GRAIN_MM) * DEPTH_GRAIN_MM;
  if (mm > 0) yield depthWay(here, Number(mm.toFixed(2)));
  else yield* removeWays(here);
}

/** A dop as wide as the facets leave it, in tenths of a millimetre. */
function* dopWays({ plan, finding }: Case<"under-dop">): Ways {
  const fits = finding.data.fitsMm;
  const { dop } = plan.piece;
  if (!dop) return;
  const mm = Math.floor(fits * 10) / 10;
  if (mm <= 0) return;
  yield {
    change: { to: "dop", mm },
    steps: [{ kind: "dop", dop: { ...dop, diameterMm: mm } }],
  };
}
