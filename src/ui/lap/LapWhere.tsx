/** The whole work at a glance, and the way to any tier, stage and stop: a press opens a pass, only a held press goes there. */
import { useEffect, useMemo, useRef, useState } from "react";
import type { Bench } from "../../core/bench/bench.ts";
import { stageName } from "../../words/names.ts";
import { tierNameOf } from "../bench/parts/names.ts";
import { useStages } from "../bench/use-stages.ts";
import { benchWords } from "../messages/bench.ts";
import { lapWords } from "../messages/lap.ts";
import { useWords } from "../messages/words.tsx";
import { useFormat } from "../use-format.ts";
import { usePlan } from "../use-studio.ts";
import { HoldButton } from "./HoldButton.tsx";
import { type LapPass, type LapStep, passesIn, readingOf } from "./lap-steps.ts";

interface WhereProps {
  readonly bench: Bench;
  readonly steps: readonly LapStep[];
  /** The step to do now. */
  readonly at: number;
  readonly onGo: (at: number) => void;
}

/** The pass that step `at` belongs to, its lead-in and what follows it included. */
const passAt = (passes: readonly LapPass[], at: number): number =>
  Math.max(
    0,
    passes.findLastIndex((pass) => pass.from <= at),
  );

export function LapWhere({ bench, steps, at, onGo }: WhereProps) {
  const words = useWords(lapWords).where;
  const passes = useMemo(() => passesIn(steps), [steps]);
  const here = passAt(passes, at);
  const [open, setOpen] = useState(here);
  const room = useRef<HTMLDivElement>(null);
  useEffect(() => {
    room.current?.focus({ preventScroll: true });
    room.current?.querySelector("li[data-here]")?.scrollIntoView({ block: "start" });
  }, []);
  return (
    <div ref={room} className="lap-where-all" tabIndex={-1}>
      <p>{words.how}</p>
      <ol aria-label={words.title}>
        {passes.map((pass, i) => (
          <Pass
            key={`${pass.tier} ${pass.stage} ${pass.from}`}
            pass={pass}
            bench={bench}
            at={at}
            isHere={i === here}
            isOpen={i === open}
            onOpen={() => setOpen(i === open ? -1 : i)}
            onGo={onGo}
          />
        ))}
      </ol>
    </div>
  );
}

interface PassProps extends Pick<WhereProps, "bench" | "at" | "onGo"> {
  readonly pass: LapPass;
  readonly isHere: boolean;
  readonly isOpen: boolean;
  readonly onOpen: () => void;
}

function Pass({ pass, bench, at, isHere, isOpen, onOpen, onGo }: PassProps) {
  const { where: words, ...lap } = useWords(lapWords);
  const names = useWords(benchWords);
  const { armAngle } = useFormat();
  const plan = usePlan();
  const stages = useStages(plan.rig);
  const tier = bench.tiers.find((one) => one.tier === pass.tier);
  const done = pass.facets.filter((facet) => facet.at < at).length;
  const state =
    done === pass.facets.length ? words.allDone : words.doneOf(String(done), String(pass.facets.length));
  return (
    <li data-here={isHere || undefined} data-done={done === pass.facets.length || undefined}>
      <button type="button" className="lap-pass" aria-expanded={isOpen} onClick={onOpen}>
        <span className="lap-pass-name">{tierNameOf(plan, pass.tier, names)}</span>
        <span>
          {stageName(stages, pass.stage)} · {armAngle(tier?.armAngleDeg ?? 0)}
        </span>
        <span className="lap-pass-done">{isHere ? `${words.here} · ${state}` : state}</span>
      </button>
      {isOpen ? (
        <div className="lap-stops">
          <HoldButton className="lap-wide" label={words.fromStart} onHeld={() => onGo(pass.from)}>
            {words.fromStart}
          </HoldButton>
          {pass.facets.map((facet) => {
            const reading = readingOf(tier, facet.facet);
            const said = reading ? (reading.isStop ? reading.label : `${reading.label}°`) : "–";
            return (
              <span key={facet.at} className="lap-to" data-done={facet.at < at || undefined}>
                <HoldButton
                  label={words.goTo(`${reading?.isStop ? lap.stop : lap.turn} ${said}`)}
                  onHeld={() => onGo(facet.at)}
                >
                  {said}
                </HoldButton>
              </span>
            );
          })}
          {pass.measureAt === null ? null : (
            <HoldButton className="lap-wide" label={words.measure} onHeld={() => onGo(pass.measureAt ?? at)}>
              {words.measure}
            </HoldButton>
          )}
        </div>
      ) : null}
    </li>
  );
}
