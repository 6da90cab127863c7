/** Beside the pointer while a tier moves: what it comes to meet, in words, and its live numbers. */

import type { Plan } from "../../../core/plan/document.ts";
import type { SnapName } from "../../../core/plan/snaps.ts";
import { solid, solved } from "../../../state/derived.ts";
import { drawingWords } from "../../messages/drawings.ts";
import type { drawings } from "../../messages/en/drawings.ts";
import type { Translated } from "../../messages/words.tsx";
import { useWords } from "../../messages/words.tsx";
import { type Formats, useFormat } from "../../use-format.ts";
import { usePlan, useStudio } from "../../use-studio.ts";
import { lostRules, type TierNumbers, tierNumbers } from "./tier-numbers.ts";
import type { Box } from "./use-box.ts";
import type { LiveDrag } from "./use-tier-drag.ts";
import "./drawing.css";

type Words = Translated<typeof drawings>;

/** Room that the words need; nearer to a border they stand on the pointer's other side. */
const ROOM_PX = 250;

export const nameOfTier = (plan: Plan, tierId: string): string =>
  plan.tiers.find((t) => t.id === tierId)?.name ?? tierId;

export function snapSaid(name: SnapName, plan: Plan, words: Words): string {
  switch (name.kind) {
    case "stop":
      return words.snap.stop(String(name.stop));
    case "touch":
      return words.snap.touch;
    case "close":
      return words.snap.close(nameOfTier(plan, name.to));
    case "corners":
      return words.snap.corners(nameOfTier(plan, name.of));
  }
}

/** Figures with their words, the one in hand first. */
function figures(live: LiveDrag, n: TierNumbers, words: Words, format: Formats): [string, string][] {
  const start: [string, string] = [
    words.live.start,
    n.stop === null ? format.degrees(n.startDeg) : words.stop(String(n.stop)),
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

export function DragReadout({ live, box }: { live: LiveDrag | null; box: Box }) {
  const words = useWords(drawingWords);
  const format = useFormat();
  const plan = usePlan();
  const before = useStudio((state) => state.drag?.before ?? null);
  const index = live ? plan.tiers.findIndex((t) => t.id === live.tierId) : -1;
  if (!live || index < 0) return <output className="readout readout-idle" aria-live="polite" />;

  const now = solved(plan);
  const numbers = tierNumbers(now, solid(plan), index);
  const lost = before ? lostRules(solved(before), now) : [];
  const { at } = live;
  const side = at && at[0] > box.width - ROOM_PX ? "left" : "right";
  const below = at !== null && at[1] < box.height / 2;
  const style = at
    ? {
        insetInlineStart: side === "right" ? at[0] + 22 : undefined,
        insetInlineEnd: side === "left" ? box.width - at[0] + 22 : undefined,
        insetBlockStart: below ? at[1] + 14 : undefined,
        insetBlockEnd: below ? undefined : box.height - at[1] + 14,
      }
    : undefined;
  return (
    <output className={at ? "readout" : "readout readout-keys"} style={style} aria-live="polite">
      {live.resting.snap ? (
        <strong className="readout-snap">{snapSaid(live.resting.snap.name, plan, words)}</strong>
      ) : null}
      <dl className="readout-figures">
        {figures(live, numbers, words, format).map(([word, figure]) => (
          <div key={word}>
            <dt>{word}</dt>
            <dd>{figure}</dd>
          </div>
        ))}
      </dl>
      {lost.map((tierId) => (
        <span key={tierId} className="readout-lost">
          {words.lost(nameOfTier(plan, tierId))}
        </span>
      ))}
    </output>
  );
}
