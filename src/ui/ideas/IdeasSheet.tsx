/** Ideas: the wish in sentences, below it the wall that fills while patterns are tried, and the idea that one has picked. */
import { type CSSProperties, useMemo, useState } from "react";
import type { IdeasAnswer } from "../../core/ideas/answer.ts";
import { COLUMNS, ROWS } from "../../core/ideas/wall.ts";
import { planOfIdea } from "../../core/ideas/wish.ts";
import type { Plan, Tier } from "../../core/plan/document.ts";
import type { SheetBodyProps } from "../app/slots.tsx";
import { Button } from "../controls/Button.tsx";
import { useJob } from "../look/use-job.ts";
import { ideasWords } from "../messages/ideas.ts";
import { useWords } from "../messages/words.tsx";
import { useFormat } from "../use-format.ts";
import { usePlan } from "../use-studio.ts";
import { draft, useDraft, wishOf } from "./draft.ts";
import { findIdeas, type WallNow } from "./find-ideas.ts";
import { IdeaPart } from "./IdeaPart.tsx";
import { pictureKey, usePictures } from "./use-pictures.ts";
import { WishWords } from "./WishWords.tsx";
import "./ideas.css";

const TRIES = 1500;

interface Hung {
  readonly cell: readonly [number, number];
  readonly plan: Plan;
}
/** What hangs on the wall outlives the sheet: closing it loses nothing. */
interface Wall {
  readonly hung: readonly Hung[];
  readonly tried: number;
  readonly meeting: number;
  readonly answer: IdeasAnswer | null;
  readonly seed: number;
}
const EMPTY: Wall = { hung: [], tried: 0, meeting: 0, answer: null, seed: 0 };
let lastWall: Wall = EMPTY;
let lastHeld: readonly Plan[] = [];

/** Names that a person reads are given here, in their language. */
function useNaming() {
  const words = useWords(ideasWords);
  return (plan: Plan, name: string, kept: number, number: number): Plan => ({
    ...plan,
    name: words.name(name, String(number)),
    tiers: plan.tiers.map((tier, i) =>
      i < kept ? tier : { ...tier, name: tier.armAngleDeg === 90 ? words.pole : words.ring(String(i + 1)) },
    ),
  });
}

function useSearch() {
  const plan = usePlan();
  const own = useDraft();
  const name = useNaming();
  const job = useJob();
  const [wall, setWall] = useState(lastWall);
  const show = (next: Wall) => {
    lastWall = next;
    setWall(next);
  };
  /** @param like tiers of plans to begin with */
  const start = (like: readonly (readonly Tier[])[]) => {
    const wish = wishOf(plan, own);
    const kept = wish.keep?.length ?? 0;
    const seed = wall.seed + 1;
    const hang = (now: WallNow, answer: IdeasAnswer | null): Wall => ({
      hung: now.found.map(({ cell, tiers, number }) => ({
        cell,
        plan: name(planOfIdea(wish, tiers, ""), plan.name, kept, number + 1),
      })),
      tried: now.tried,
      meeting: now.meeting,
      answer,
      seed,
    });
    job.start(async (signal, onShare) => {
      let last: WallNow = { found: [], tried: 0, meeting: 0 };
      const answer = await findIdeas(wish, { tries: TRIES, seed, like }, signal, (now, share) => {
        if (signal.aborted) return;
        last = now;
        show(hang(now, null));
        onShare(share);
      });
      show(hang({ ...last, ...answer }, answer));
    });
  };
  return { wall, job, start };
}

function useInTheWay(answer: IdeasAnswer | null): string | null {
  const words = useWords(ideasWords);
  const { number } = useFormat();
  if (!answer || answer.ideas.length > 0) return null;
  const said = answer.inTheWay.slice(0, 2).map(({ limit, share }) => {
    const name =
      limit === "meets" || limit === "tiers" || limit === "facets"
        ? words.way[limit]
        : words.axis[limit as "minutes"];
    return words.way.limit(name, `${number(100 * share, 0)} %`);
  });
  return words.nothing(said.join(", "));
}

function WallGrid({
  hung,
  pictures,
  picked,
  onPick,
}: {
  hung: readonly Hung[];
  pictures: readonly string[];
  picked: Plan | null;
  onPick: (plan: Plan) => void;
}) {
  const words = useWords(ideasWords);
  const { across, up } = useDraft();
  const at = (x: number, y: number) => hung.findIndex(({ cell }) => cell[0] === x && cell[1] === y);
  const rows = Array.from({ length: ROWS }, (_, k) => ROWS - 1 - k);
  return (
    <div className="idea-wall">
      <p className="idea-axis">
        {words.axis[up]}: {words.most} ↑
      </p>
      {rows.map((y) => (
        <ul key={y} style={{ "--columns": COLUMNS } as CSSProperties}>
          {Array.from({ length: COLUMNS }, (_, x) => x).map((x) => {
            const i = at(x, y);
            if (i < 0)
              return (
                <li key={x} className="idea-none">
                  <span className="unseen">{words.empty}</span>
                </li>
              );
            const { plan } = hung[i];
            return (
              <li key={x}>
                <Button
                  className="idea"
                  aria-pressed={picked === plan}
                  aria-label={plan.name}
                  onPress={() => onPick(plan)}
                >
                  <img src={pictures[i]} alt="" />
                </Button>
              </li>
            );
          })}
        </ul>
      ))}
      <p className="idea-axis idea-axis-across">
        {words.axis[across]}: {words.most} →
      </p>
    </div>
  );
}

export default function IdeasSheet({ onClose }: SheetBodyProps) {
  const words = useWords(ideasWords);
  const { number } = useFormat();
  const bench = usePlan();
  const { wall, job, start } = useSearch();
  const [picked, pick] = useState<Plan | null>(null);
  const [held, setHeld] = useState(lastHeld);
  const shown = useMemo(() => [...wall.hung.map(({ plan }) => plan), ...held], [wall.hung, held]);
  const { urls: pictures, isBroken } = usePictures(shown);
  const isHeld = (plan: Plan) => held.some((one) => pictureKey(one) === pictureKey(plan));
  const hold = (plan: Plan) => {
    lastHeld = isHeld(plan) ? held.filter((one) => pictureKey(one) !== pictureKey(plan)) : [...held, plan];
    setHeld(lastHeld);
  };
  const inTheWay = useInTheWay(wall.answer);
  const isRunning = job.share !== null;
  const counts = [number(wall.tried, 0), number(wall.meeting, 0), number(wall.hung.length, 0)] as const;
  const own = picked ? shown.findIndex((plan) => pictureKey(plan) === pictureKey(picked)) : -1;
  return (
    <div className="ideas">
      <p className="soft">{words.intro}</p>
      <WishWords />
      <p className="idea-row">
        {isRunning ? (
          <Button look="strong" onPress={job.stop}>
            {words.stop}
          </Button>
        ) : (
          <Button
            look="strong"
            onPress={() => start([bench.tiers, ...wall.hung.map(({ plan }) => plan.tiers)])}
          >
            {wall.hung.length > 0 ? words.further : words.start}
          </Button>
        )}
        <span role="status">
          {isRunning
            ? words.trying(counts[0], counts[2])
            : wall.answer && !inTheWay
              ? words.done(...counts)
              : wall.tried > 0 && !wall.answer
                ? words.stopped
                : ""}
        </span>
      </p>
      {isBroken ? <p className="soft">{words.undrawn}</p> : null}
      {inTheWay ? <p role="alert">{inTheWay}</p> : null}
      {job.trouble ? <p role="alert">{words.trouble(job.trouble)}</p> : null}
      {picked && own >= 0 ? (
        <IdeaPart
          plan={shown[own]}
          picture={pictures[own]}
          isHeld={isHeld(shown[own])}
          onHold={() => hold(shown[own])}
          onMore={() => {
            const { across, up } = draft.getState();
            draft.setState({ across, up });
            start([shown[own].tiers]);
          }}
          onClose={onClose}
        />
      ) : null}
      {wall.hung.length > 0 || isRunning ? (
        <WallGrid hung={wall.hung} pictures={pictures} picked={picked} onPick={pick} />
      ) : null}
      {held.length > 0 ? (
        <section>
          <h3>{words.held}</h3>
          <ul className="idea-held">
            {held.map((plan, i) => (
              <li key={pictureKey(plan)}>
                <Button
                  className="idea"
                  aria-label={plan.name}
                  aria-pressed={picked === plan}
                  onPress={() => pick(plan)}
                >
                  <img src={pictures[wall.hung.length + i]} alt="" />
                </Button>
              </li>
            ))}
          </ul>
        </section>
      ) : null}
    </div>
  );
}
