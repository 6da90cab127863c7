/** Every depth rule in one record: its fields in a file, how deep it goes, what it costs to solve, how a tier comes to it. */
import * as z from "zod/mini";
import type { DepthRule, RuleName, RuleOf } from "../document.ts";
import { RANGES } from "../limits.ts";
import { fields, id, number } from "../schema-fields.ts";
import { namedTierOf } from "./amounts.ts";
import { depthToClose } from "./close-rule.ts";
import { depthForCorners } from "./corners-rule.ts";
import { depthForEdge } from "./edge-rule.ts";
import { depthForGap } from "./gap-rule.ts";
import { type Answer, namedTier, type TierContext } from "./tier-context.ts";
import { depthForWidth } from "./width-rule.ts";

/** A tier as it is now, for a rule that takes over: the greatest of each size, null where there is none; mm. */
export interface TierNow {
  readonly depthMm: number;
  readonly widthMm: number | null;
  readonly gapMm: number | null;
  readonly edgeMm: number | null;
  /** The tier that a rule would name. */
  readonly other: string;
}

interface RuleRecord<R extends RuleName> {
  /** Among the rules as they are offered. */
  readonly place: number;
  readonly schema: z.ZodMiniType<RuleOf<R>>;
  readonly solve: (context: TierContext, rule: RuleOf<R>) => Answer;
  /** What solving costs, as counts of the quickest. */
  readonly cost: number;
  /** The rule that keeps a tier as near as can be to what it is now. */
  readonly from: (now: TierNow) => RuleOf<R>;
}
type Records = { readonly [R in RuleName]: RuleRecord<R> };

/** Taken over where a tier has no such size. */
const START_MM = 1;
/** To a hundredth, so that a number taken over from the glass reads as one would type it. */
const rounded = (mm: number | null): number => Math.round((mm ?? START_MM) * 100) / 100;

const mm = number(RANGES.ruleMm);

export const RULES = {
  depth: {
    place: 5,
    schema: fields({ rule: z.literal("depth"), mm }),
    solve: (context, rule) => ({ depth: rule.mm / context.radiusMm }),
    cost: 1,
    from: ({ depthMm }) => ({ rule: "depth", mm: rounded(depthMm) }),
  },
  width: {
    place: 4,
    schema: fields({ rule: z.literal("width"), mm }),
    solve: (context, rule) => depthForWidth(context, rule.mm / context.radiusMm),
    cost: 3,
    from: ({ widthMm }) => ({ rule: "width", mm: rounded(widthMm) }),
  },
  gap: {
    place: 3,
    schema: fields({ rule: z.literal("gap"), mm }),
    solve: (context, rule) => depthForGap(context, rule.mm / context.radiusMm),
    cost: 1,
    from: ({ gapMm }) => ({ rule: "gap", mm: Math.max(0, rounded(gapMm)) }),
  },
  touch: {
    place: 1,
    schema: fields({ rule: z.literal("touch") }),
    solve: (context) => depthForGap(context, 0),
    cost: 1,
    from: () => ({ rule: "touch" }),
  },
  edge: {
    place: 2,
    schema: fields({ rule: z.literal("edge"), mm }),
    solve: (context, rule) => depthForEdge(context, rule.mm / context.radiusMm),
    cost: 5,
    from: ({ edgeMm }) => ({ rule: "edge", mm: rounded(edgeMm) }),
  },
  close: {
    place: 6,
    schema: fields({ rule: z.literal("close"), to: id }),
    solve: (context, rule) => depthToClose(context, namedTier(context, rule.to)),
    cost: 100,
    from: ({ other }) => ({ rule: "close", to: other }),
  },
  corners: {
    place: 7,
    schema: fields({ rule: z.literal("corners"), of: id }),
    solve: (context, rule) => depthForCorners(context, namedTier(context, rule.of)),
    cost: 1,
    from: ({ other }) => ({ rule: "corners", of: other }),
  },
} as const satisfies Records;

const TABLE: Records = RULES;

/** Depth by one rule, as a fraction of the radius. */
export const depthByRule = <R extends RuleName>(context: TierContext, rule: RuleOf<R>): Answer =>
  TABLE[rule.rule].solve(context, rule);

/** A tier of which nothing is known: rules that meet something don't ask. */
export const NOTHING_KNOWN: TierNow = { depthMm: 0, widthMm: null, gapMm: null, edgeMm: null, other: "" };

/** The rules in the order in which they are offered, and whether each names an earlier tier. */
export const OFFERED: readonly { readonly rule: RuleName; readonly namesTier: boolean }[] = Object.values(
  RULES,
)
  .toSorted((a, b) => a.place - b.place)
  .map(({ from }): DepthRule => from(NOTHING_KNOWN))
  .map((rule) => ({ rule: rule.rule, namesTier: namedTierOf(rule) !== null }));
