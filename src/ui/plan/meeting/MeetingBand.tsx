/**
 * Beside the angle or count that one edits: with which everything meets, as a band and in words. A worker looks; while it does, and
 * where there is none, nothing stands here.
 */
import { type CSSProperties, useEffect, useState } from "react";
import { type AngleRange, keepsPart } from "../../../core/check/meeting-range.ts";
import type { Plan, Tier } from "../../../core/plan/document.ts";
import { RANGES } from "../../../core/plan/limits.ts";
import { drawingWords } from "../../messages/drawings.ts";
import { useWords } from "../../messages/words.tsx";
import { useVerdict } from "../../shared/verdict-said.ts";
import { useFormat } from "../../use-format.ts";
import { usePlan } from "../../use-studio.ts";
import { type Asked, askAngles, askCounts } from "../mends/plan-worker-client.ts";
import "./meeting.css";

/** A plan has to stand this long before it is looked: while it is being changed each answer would be out of date. */
const REST_MS = 250;

/** What a worker finds for the plan as it is; the answer before stays until there is a new one, the last question wins. */
function useFound<T>(
  tierIndex: number,
  ask: (plan: Plan, tierIndex: number, found: (one: T) => void) => Asked,
): readonly T[] {
  const plan = usePlan();
  const [found, setFound] = useState<readonly T[]>([]);
  useEffect(() => {
    let asked: Asked | null = null;
    const timer = setTimeout(() => {
      const all: T[] = [];
      const own = ask(plan, tierIndex, (one) => all.push(one));
      asked = own;
      const finish = () => {
        if (asked === own) setFound(all);
      };
      // a worker that breaks off has found no more
      own.done.then(finish, finish);
    }, REST_MS);
    return () => {
      clearTimeout(timer);
      asked?.stop();
      asked = null;
    };
  }, [plan, tierIndex, ask]);
  return found;
}

const share = (deg: number): string => `${(100 * deg) / RANGES.armAngleDeg.max}%`;

interface RangeProps {
  readonly tier: Tier;
  readonly tierIndex: number;
  /** Whether it is the whole piece that meets in the range, not only what of it meets now. */
  readonly isAll: boolean;
}

function Angles({ tier, tierIndex, isAll }: RangeProps) {
  const words = useWords(drawingWords).allMeets;
  const { cuttingAngle, degrees } = useFormat();
  const [range] = useFound<AngleRange>(tierIndex, askAngles);
  if (!range) return null;
  // Lapidaries' angles count from the other end.
  const turned = (deg: number) => (cuttingAngle ? RANGES.armAngleDeg.max - deg : deg);
  const [from, to] = [turned(range.fromDeg), turned(range.toDeg)].sort((a, b) => a - b);
  const place = { "--from": share(from), "--to": share(to), "--at": share(turned(tier.armAngleDeg)) };
  return (
    <span className="meeting" data-from={range.fromDeg} data-to={range.toDeg}>
      <span className="meeting-band" style={place as CSSProperties} aria-hidden="true" />
      {words.angles(degrees(from, 1), degrees(to, 1), isAll)}
    </span>
  );
}

function Counts({ tierIndex, isAll }: RangeProps) {
  const words = useWords(drawingWords).allMeets;
  const counts = useFound<number>(tierIndex, askCounts);
  if (counts.length === 0) return null;
  const inOrder = [...counts].sort((a, b) => a - b);
  return (
    <span className="meeting" data-counts={inOrder.join(" ")}>
      {words.counts(inOrder.map(String), isAll)}
    </span>
  );
}

export default function MeetingBand({ tier, of }: { tier: Tier; of: "angle" | "count" }) {
  const plan = usePlan();
  const { verdict } = useVerdict();
  const tierIndex = plan.tiers.findIndex(({ id }) => id === tier.id);
  if (tierIndex < 0) return null;
  const Range = of === "angle" ? Angles : Counts;
  return <Range tier={tier} tierIndex={tierIndex} isAll={!keepsPart(verdict)} />;
}
