/** Whether a plan meets, in one word for the whole piece, and where to look first. Data only. */
import { isCovered, meetingPoint } from "../geometry/circles.ts";
import type { PlanFinding, PlanFindingCode } from "../plan/finding.ts";
import type { SolvedPlan } from "../plan/solved.ts";
import type { Report } from "./report.ts";

export type VerdictKind =
  /** Nothing is to be cut yet. */
  | "uncut"
  /** Something can't be ground as planned. */
  | "stops"
  /** Corners or edges that should come together miss. */
  | "misses"
  /** Something else is to be looked at. */
  | "look"
  /** Round skin stays open between neighbours. */
  | "apart"
  /** No facet has a neighbour to meet. */
  | "alone"
  | "meets";

interface Found {
  /** Tiers that take part, in cutting order. */
  readonly tiers: readonly string[];
  /** How far at the most, mm; null where there is nothing to measure. */
  readonly byMm: number | null;
  /** The tier to go to first; null for what is true of the whole piece, or needs no going. */
  readonly tier: string | null;
}

/** `code` is that of the finding that is the first cause; null where no finding speaks of it. */
export type Verdict = Found &
  (
    | { readonly kind: "stops" | "look"; readonly code: PlanFindingCode }
    | { readonly kind: Exclude<VerdictKind, "stops" | "look">; readonly code: PlanFindingCode | null }
  );

/** By how much a finding says that meets are missed, mm; null for one that is no miss. */
function missMm(finding: PlanFinding): number | null {
  switch (finding.code) {
    case "near-miss":
    case "wheel-splits":
    case "edit-splits":
      return finding.data.missMm;
    case "overshoot":
      return finding.data.worstMm;
    default:
      return null;
  }
}

interface Apart {
  readonly tiers: readonly string[];
  readonly mm: number;
  readonly code: PlanFindingCode | null;
}

/** Gaps of open skin between neighbours of one tier. Where another facet lies between them, nothing is open. */
function openWithin(solved: SolvedPlan, { pairs }: Pick<Report, "pairs">): Apart[] {
  const { facets, planes, plan } = solved;
  const at = new Map(facets.map(({ id }, i) => [id, i]));
  return pairs.flatMap(({ a, b, state, gapMm }) => {
    if (state !== "gap" || gapMm <= 0) return [];
    const [i, j] = [at.get(a), at.get(b)];
    if (i === undefined || j === undefined) return [];
    const { tierIndex } = facets[i];
    // Two facets face each other across the piece: they are no neighbours that could meet.
    if (tierIndex !== facets[j].tierIndex || plan.tiers[tierIndex].count < 3) return [];
    if (isCovered(meetingPoint(planes[i], planes[j]), i, j, planes)) return [];
    return [{ tiers: [plan.tiers[tierIndex].id], mm: gapMm, code: null }];
  });
}

/** Skin that findings tell of between tiers. */
const openBetween = (findings: readonly PlanFinding[]): Apart[] =>
  findings.flatMap(({ code, data }) =>
    code === "skin-between" ? [{ tiers: data.tiers, mm: data.mostMm, code }] : [],
  );

/** @param report the report of the same plan */
export function verdictOf(solved: SolvedPlan, report: Pick<Report, "findings" | "pairs">): Verdict {
  const { tiers: planned } = solved.plan;
  const inOrder = (ids: readonly (string | undefined)[]) =>
    planned.map(({ id }) => id).filter((id) => ids.includes(id));
  const none = { tiers: [], byMm: null, code: null, tier: null };
  const told = <K extends VerdictKind>(kind: K, first: PlanFinding) => ({
    kind,
    tiers: inOrder([first.tier]),
    byMm: null,
    code: first.code,
    tier: first.tier ?? null,
  });
  if (planned.length === 0) return { kind: "uncut", ...none };

  const stop = report.findings.find(({ severity }) => severity === "stop");
  if (stop) return told("stops", stop);

  const warned = report.findings.filter(({ severity }) => severity === "warn");
  const misses = warned.flatMap((finding) => {
    const mm = missMm(finding);
    return mm === null ? [] : [{ finding, mm }];
  });
  if (misses.length > 0) {
    return {
      ...told("misses", misses[0].finding),
      tiers: inOrder(misses.map(({ finding }) => finding.tier)),
      byMm: Math.max(...misses.map(({ mm }) => mm)),
    };
  }
  if (warned.length > 0) return told("look", warned[0]);

  const apart = [...openBetween(report.findings), ...openWithin(solved, report)];
  if (apart.length > 0) {
    const worst = apart.reduce((most, one) => (one.mm > most.mm ? one : most));
    return {
      kind: "apart",
      tiers: inOrder(apart.flatMap(({ tiers }) => tiers)),
      byMm: worst.mm,
      code: worst.code,
      tier: inOrder(worst.tiers).at(-1) ?? null,
    };
  }
  const isMet = report.pairs.some(({ state }) => state !== "gap");
  return { kind: isMet ? "meets" : "alone", ...none };
}
