/** Beside the pointer while a tier moves: what it comes to meet, in words, and its live numbers. */

import { type CSSProperties, useRef } from "react";
import { engravedStop, startLabel, stopLabel } from "../../../core/bench/rig/set-up.ts";
import type { Plan, Side, Tier } from "../../../core/plan/document.ts";
import { amountOf } from "../../../core/plan/rules/amounts.ts";
import type { SnapName } from "../../../core/plan/snaps.ts";
import { solid, solved } from "../../../state/derived.ts";
import type { drawings } from "../../../words/en/drawings.ts";
import { findingInWords } from "../../../words/findings.ts";
import type { Formats } from "../../../words/formats.ts";
import type { Translated } from "../../../words/language.ts";
import { askedOf } from "../../../words/rules.ts";
import type { Say } from "../../../words/say.ts";
import { drawingWords } from "../../messages/drawings.ts";
import { findingWords } from "../../messages/findings.ts";
import { ruleWords } from "../../messages/rules.ts";
import { useLanguage, useWords } from "../../messages/words.tsx";
import { useIsLate, useSettledPlan } from "../../settled.ts";
import { useFormat } from "../../use-format.ts";
import { useSay } from "../../use-say.ts";
import { usePlan, useStudio } from "../../use-studio.ts";
import type { LiveDrag, ScreenPoint } from "./tier-hold.ts";
import { lostRules, type TierNumbers, tierNumbers } from "./tier-numbers.ts";
import type { Box } from "./use-box.ts";

type Words = Translated<typeof drawings>;

/** Room that the words need; nearer to the page's border they stand on the pointer's other side. */
const ROOM_PX = { width: 290, height: 190 };
const BESIDE_PX = 22;
const BELOW_PX = 14;
/** Over a small picture's border stands its name. */
const OVER_NAME_PX = 34;
/** As wide as the words may become: 16rem. */
const MOST_WIDE_PX = 256;

/** What of the picture the words must leave free, where the page has room for them elsewhere. */
export type ClearOf = { readonly kind: "picture" } | { readonly kind: "left-part"; readonly toPx: number };

/** Above the picture or at its right, still while the hand moves; null where there is no room for that. */
export function placeClear(
  clearOf: ClearOf | undefined,
  box: Box,
  pictureTopPx: number,
): CSSProperties | null {
  if (clearOf?.kind === "picture" && pictureTopPx >= ROOM_PX.height + OVER_NAME_PX)
    return { insetInlineStart: 0, insetBlockEnd: box.height + OVER_NAME_PX };
  if (clearOf?.kind === "left-part" && box.width - clearOf.toPx >= MOST_WIDE_PX)
    return { insetInlineStart: clearOf.toPx, insetBlockStart: OVER_NAME_PX };
  return null;
}

/** Beside the pointer, on the side where the page has room for them; a small picture lets them reach over its border. */
function placeBeside([x, y]: ScreenPoint, box: Box, picture: DOMRect | undefined): CSSProperties {
  const isLeft = (picture?.left ?? 0) + x + ROOM_PX.width > window.innerWidth;
  const isAbove = (picture?.top ?? 0) + y + ROOM_PX.height > window.innerHeight;
  return {
    ...(isLeft ? { insetInlineEnd: box.width - x + BESIDE_PX } : { insetInlineStart: x + BESIDE_PX }),
    ...(isAbove ? { insetBlockEnd: box.height - y + BELOW_PX } : { insetBlockStart: y + BELOW_PX }),
  };
}

const sideOf = (plan: Plan, tierId: string): Side => plan.tiers.find((t) => t.id === tierId)?.side ?? "front";

export function snapSaid(name: SnapName, plan: Plan, side: Side, words: Words, say: Say): string {
  if (name.kind === "stop")
    return words.snap.stop(stopLabel(plan, side, engravedStop(plan, side, name.stop)));
  return ruleWords[say.language][name.rule.rule].snap(askedOf(name.rule, say));
}

/** Figures with their words, the one in hand first. */
function figures(
  live: LiveDrag,
  n: TierNumbers,
  plan: Plan,
  words: Words,
  format: Formats,
): [string, string][] {
  const tier = plan.tiers.find(({ id }) => id === live.tierId);
  // the ring's least stop, as the recipe has it
  const stop = tier ? startLabel(plan, tier, n.startDeg) : null;
  const start: [string, string] = [
    words.live.start,
    stop === null ? format.degrees(n.startDeg) : words.stop(stop),
  ];
  const meeting: [string, string][] =
    n.gapMm === null
      ? []
      : n.edgeMm > 0
        ? [[words.live.edge, format.length(n.edgeMm)]]
        : [[words.live.gap, format.length(n.gapMm, 2)]];
  const all: [string, string][] = [
    [words.live.angle, format.armAngle(n.armAngleDeg)],
    [words.live.depth, format.length(n.depthMm, 2)],
    [words.live.width, format.length(n.widthMm)],
    ...meeting,
  ];
  return live.value === "start" ? [start, ...all] : all;
}

/** The one that the hand sets. */
function figureInHand(
  { value }: LiveDrag,
  tier: Tier,
  plan: Plan,
  words: Words,
  format: Formats,
): [string, string] {
  if (value === "angle") return [words.live.angle, format.armAngle(tier.armAngleDeg)];
  if (value === "depth") return [words.live.depth, format.length(amountOf(tier.depth) ?? 0, 2)];
  const stop = startLabel(plan, tier, tier.startDeg);
  return [words.live.start, stop === null ? format.degrees(tier.startDeg) : words.stop(stop)];
}

export default function DragReadout({
  live,
  box,
  clearOf,
}: {
  live: LiveDrag | null;
  box: Box;
  clearOf?: ClearOf;
}) {
  const words = useWords(drawingWords);
  const inWords = findingWords[useLanguage()];
  const say = useSay();
  const format = useFormat();
  const plan = usePlan();
  const isLate = useIsLate();
  const settled = useSettledPlan();
  const before = useStudio((state) => state.drag?.before ?? null);
  const element = useRef<HTMLOutputElement>(null);
  const index = live ? plan.tiers.findIndex((t) => t.id === live.tierId) : -1;
  if (!live || index < 0) {
    return <output ref={element} className="readout readout-idle" aria-live="polite" />;
  }

  const now = solved(settled);
  // while it is reckoned, what the hand set is all that is known
  const shown = isLate
    ? [figureInHand(live, plan.tiers[index], plan, words, format)]
    : figures(live, tierNumbers(now, solid(settled), index), plan, words, format);
  const lost = before && !isLate ? lostRules(solved(before), now) : [];
  const { at } = live;
  /** Which tier, which rule, and why not. */
  const lostSaid = (tierId: string): string => {
    const finding = now.findings.find((f) => f.tier === tierId && f.code === "rule-unmet");
    const name = say.tier(tierId);
    return finding ? words.lostWhy(name, findingInWords(finding, inWords, say)) : words.lost(name);
  };
  const picture = element.current?.parentElement?.getBoundingClientRect();
  const style = at
    ? (placeClear(clearOf, box, picture?.top ?? 0) ?? placeBeside(at, box, picture))
    : undefined;
  return (
    <output
      ref={element}
      className={at ? "readout" : "readout readout-keys"}
      style={style}
      aria-live="polite"
    >
      {live.resting.snap ? (
        <strong className="readout-snap">
          {snapSaid(live.resting.snap.name, plan, sideOf(plan, live.tierId), words, say)}
        </strong>
      ) : null}
      <dl className="readout-figures">
        {shown.map(([word, figure]) => (
          <div key={word}>
            <dt>{word}</dt>
            <dd>{figure}</dd>
          </div>
        ))}
      </dl>
      {lost.map((tierId) => (
        <span key={tierId} className="readout-lost">
          {lostSaid(tierId)}
        </span>
      ))}
    </output>
  );
}
