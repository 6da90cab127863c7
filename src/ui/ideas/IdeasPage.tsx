/** Ideas: the wish in sentences, below it the wall that fills while patterns are tried, and beside it the idea that one has picked. */
import { useEffect, useMemo, useRef, useState } from "react";
import type { IdeasAnswer } from "../../core/ideas/answer.ts";
import { frontCountsOf } from "../../core/ideas/genes.ts";
import type { Plan } from "../../core/plan/document.ts";
import { Button } from "../controls/Button.tsx";
import { ideasWords } from "../messages/ideas.ts";
import { useWords } from "../messages/words.tsx";
import { useFormat } from "../use-format.ts";
import { usePlan } from "../use-studio.ts";
import { HeldPart } from "./HeldPart.tsx";
import { IdeaPart } from "./IdeaPart.tsx";
import { MeasuresPart } from "./MeasuresPart.tsx";
import { TastePart } from "./TastePart.tsx";
import { pictureKey, usePictures } from "./use-pictures.ts";
import { useSearch } from "./use-search.ts";
import { WallGrid } from "./WallGrid.tsx";
import { WishWords } from "./WishWords.tsx";
import { bringBack, hold, isHeld, letGo, throwAway, useWall } from "./wall-store.ts";
import "../look/look.css";
import "./ideas.css";

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

/** What is picked comes into sight where it stands below. */
function useIntoSight(picked: Plan | null) {
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (picked) place.current?.scrollIntoView({ block: "nearest" });
  }, [picked]);
  return place;
}

export default function IdeasPage() {
  const words = useWords(ideasWords);
  const { number } = useFormat();
  const bench = usePlan();
  const wall = useWall();
  const { hung, held, thrown, answer, tried } = wall;
  const { job, start } = useSearch();
  const [picked, pick] = useState<Plan | null>(null);
  const shown = useMemo(() => [...hung.map(({ plan }) => plan), ...held], [hung, held]);
  const { urls: pictures, isBroken } = usePictures(shown);
  const place = useIntoSight(picked);
  const isShown = (plan: Plan) => !thrown.has(pictureKey(plan));
  const inTheWay = useInTheWay(answer);
  const isRunning = job.share !== null;
  const counts = [
    number(tried, 0),
    number(wall.meeting, 0),
    number(hung.filter(({ plan }) => isShown(plan)).length, 0),
  ] as const;
  const own = picked ? shown.findIndex((plan) => pictureKey(plan) === pictureKey(picked)) : -1;
  const further = () =>
    start({
      like: [bench.tiers, ...hung.filter(({ plan }) => isShown(plan)).map(({ plan }) => plan.tiers)],
      ways: "open",
    });
  return (
    <div className="ideas">
      <div className="idea-main">
        <h1 className="unseen">{words.title}</h1>
        <p className="soft">{words.intro}</p>
        <WishWords />
        <div className="idea-row">
          <Button look="strong" onPress={isRunning ? job.stop : further}>
            {isRunning ? words.stop : hung.length > 0 ? words.further : words.start}
          </Button>
          <span role="status">
            {isRunning
              ? words.trying(counts[0], counts[2])
              : answer && !inTheWay
                ? words.done(...counts)
                : tried > 0 && !answer
                  ? words.stopped
                  : ""}
          </span>
        </div>
        {isBroken ? <p className="soft">{words.undrawn}</p> : null}
        {inTheWay ? <p role="alert">{inTheWay}</p> : null}
        {job.trouble ? <p role="alert">{words.trouble(job.trouble)}</p> : null}
        {hung.length > 0 || isRunning ? (
          <WallGrid hung={hung} pictures={pictures} picked={picked} isShown={isShown} onPick={pick} />
        ) : null}
        {thrown.size > 0 ? (
          <Button look="outlined" onPress={bringBack}>
            {words.bringBack(thrown.size)}
          </Button>
        ) : null}
      </div>
      <div className="idea-beside" ref={place}>
        {picked && own >= 0 ? (
          <IdeaPart
            key={pictureKey(shown[own])}
            plan={shown[own]}
            picture={pictures[own]}
            isHeld={isHeld(wall, shown[own])}
            onHold={() => (isHeld(wall, shown[own]) ? letGo : hold)(shown[own])}
            onThrow={() => {
              throwAway(shown[own]);
              pick(null);
            }}
            onMore={() => start({ like: [shown[own].tiers], ways: "near" })}
            onFront={() =>
              start({
                like: [shown[own].tiers],
                ways: "near",
                frontCounts: frontCountsOf(shown[own].tiers),
              })
            }
          />
        ) : hung.length > 0 ? (
          <p className="soft">{words.pick}</p>
        ) : null}
        {held.length > 0 ? (
          <HeldPart
            held={held}
            pictures={pictures.slice(hung.length)}
            picked={picked}
            onPick={pick}
            onBetween={(a, b) => start({ like: [a.tiers, b.tiers], ways: "between" })}
          />
        ) : null}
        <TastePart hung={hung} pictures={pictures} isShown={isShown} onPick={pick} />
        <MeasuresPart isOpen={hung.length === 0 && !isRunning} />
      </div>
    </div>
  );
}
