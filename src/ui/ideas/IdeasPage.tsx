/** Ideas: the wish in sentences, below it the wall that fills while patterns are tried, and beside it the idea that one has picked. */
import { useEffect, useMemo, useRef, useState } from "react";
import { useStore } from "zustand";
import { frontCountsOf } from "../../core/ideas/genes.ts";
import type { Plan } from "../../core/plan/document.ts";
import { Button } from "../controls/Button.tsx";
import { ideasWords } from "../messages/ideas.ts";
import { useWords } from "../messages/words.tsx";
import { choosePlanFile } from "../shared/files.ts";
import { useStudioStore } from "../studio.ts";
import { useFormat } from "../use-format.ts";
import { usePlan } from "../use-studio.ts";
import { useSession } from "../visit.ts";
import { useDraft } from "./draft.ts";
import { HeldPart } from "./HeldPart.tsx";
import { bringBack, hold, isHeld, letGo, throwAway, useHolding } from "./held-store.ts";
import { IdeaPart } from "./IdeaPart.tsx";
import { MeasuresPart } from "./MeasuresPart.tsx";
import { pictureKey } from "./picture-key.ts";
import { TastePart } from "./TastePart.tsx";
import { usePictures } from "./use-pictures.ts";
import { useSearch } from "./use-search.ts";
import { WallGrid } from "./WallGrid.tsx";
import { WishWords } from "./WishWords.tsx";
import { giveLibrary, unkept } from "./wall-shelf.ts";
import { useWall, type Wall } from "./wall-store.ts";
import "../look/look.css";
import "./ideas.css";

function useInTheWay({ state, hung, tried, meeting, inTheWay }: Wall): string | null {
  const words = useWords(ideasWords);
  const { number } = useFormat();
  if (state !== "done" || hung.length > 0) return null;
  const said = inTheWay.slice(0, 2).map(({ limit, share }) => {
    const name =
      limit === "meets" || limit === "tiers" || limit === "facets"
        ? words.way[limit]
        : words.axis[limit as "minutes"];
    if (tried === 0) return words.way.never(name);
    // once some meet, limits are held against these alone
    const said = limit !== "meets" && meeting > 0 ? words.way.limitOfMeeting : words.way.limit;
    return said(name, `${number(100 * share, 0)}\u00a0%`);
  });
  return words.nothing(said.join(", "));
}

/** What is picked comes into sight where it stands below. */
function useIntoSight(picked: Plan | null) {
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!picked) return;
    place.current?.scrollTo(0, 0);
    place.current?.scrollIntoView({ block: "nearest" });
  }, [picked]);
  return place;
}

/** What stands in the way is brought into sight: on a phone it comes below the button that was pressed. */
function InTheWayLine({ text }: { text: string }) {
  const line = useRef<HTMLParagraphElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: once for each text
  useEffect(() => line.current?.scrollIntoView({ block: "nearest" }), [text]);
  return (
    <p ref={line} role="alert">
      {text}
    </p>
  );
}

/** What begins a search or ends it, and how far it is. */
function SearchRow({
  wall: { state, hung, tried, meeting },
  shown,
  isInTheWay,
  onStart,
  onStop,
}: {
  wall: Wall;
  /** How many of what hangs were not thrown away. */
  shown: number;
  isInTheWay: boolean;
  onStart: () => void;
  onStop: () => void;
}) {
  const words = useWords(ideasWords);
  const { number } = useFormat();
  const studio = useStudioStore();
  const isRunning = state === "trying";
  const counts = [number(tried, 0), number(meeting, 0), number(shown, 0)] as const;
  return (
    <div className="idea-row">
      <Button look="strong" onPress={isRunning ? onStop : onStart}>
        {isRunning ? words.stop : hung.length > 0 ? words.further : words.start}
      </Button>
      <Button look="outlined" onPress={() => choosePlanFile(studio)}>
        {words.wish.given.open}
      </Button>
      <span role="status">
        {isRunning
          ? words.trying(counts[0], counts[2])
          : state === "done" && !isInTheWay
            ? words.done(...counts)
            : state === "stopped"
              ? words.stopped(counts[0], counts[2])
              : ""}
      </span>
    </div>
  );
}

/** The pictures inside plans that hang or are held lie in the library of the visit. */
function useLibrary(): void {
  const session = useSession();
  useEffect(() => {
    if (session) giveLibrary(session.library);
  }, [session]);
}

export default function IdeasPage() {
  const words = useWords(ideasWords);
  const bench = usePlan();
  const wall = useWall();
  const { state, hung } = wall;
  const holding = useHolding();
  const { held, thrown } = holding;
  const isUnkept = useStore(unkept, ({ lines }) => lines.has("held"));
  const { job, start } = useSearch();
  useLibrary();
  const [picked, pick] = useState<Plan | null>(null);
  const shown = useMemo(() => [...hung.map(({ plan }) => plan), ...held], [hung, held]);
  const isRunning = state === "trying";
  const { urls: pictures, isUntraced } = usePictures(shown, isRunning);
  const place = useIntoSight(picked);
  const isShown = (plan: Plan) => !thrown.includes(pictureKey(plan));
  const left = hung.filter(({ plan }) => isShown(plan));
  const inTheWay = useInTheWay(wall);
  const own = picked ? shown.findIndex((plan) => pictureKey(plan) === pictureKey(picked)) : -1;
  const { given } = useDraft();
  const studio = useStudioStore();
  const further = () =>
    start({
      like: [...(given ? [] : [bench.tiers]), ...left.map(({ plan }) => plan.tiers)],
      ways: "open",
    });
  return (
    <div className="ideas">
      <div className="idea-main">
        <h1 className="unseen">{words.title}</h1>
        <p className="soft">{words.intro}</p>
        <WishWords />
        <SearchRow
          wall={wall}
          shown={left.length}
          isInTheWay={inTheWay !== null}
          onStart={further}
          onStop={job.stop}
        />
        {isUntraced && hung.length > 0 ? <p className="soft">{words.undrawn}</p> : null}
        {inTheWay ? <InTheWayLine text={inTheWay} /> : null}
        {job.trouble ? <p role="alert">{words.trouble(job.trouble)}</p> : null}
        {hung.length > 0 || isRunning ? (
          <WallGrid hung={hung} pictures={pictures} picked={picked} isShown={isShown} onPick={pick} />
        ) : null}
        {thrown.length > 0 ? (
          <Button look="outlined" onPress={() => bringBack(studio)}>
            {words.bringBack(thrown.length)}
          </Button>
        ) : null}
      </div>
      <div className="idea-beside" ref={place}>
        {picked && own >= 0 ? (
          <IdeaPart
            key={pictureKey(shown[own])}
            plan={shown[own]}
            picture={pictures[own]}
            isHeld={isHeld(holding, shown[own])}
            onHold={() => (isHeld(holding, shown[own]) ? letGo : hold)(studio, shown[own])}
            onThrow={() => {
              throwAway(studio, shown[own]);
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
            isUnkept={isUnkept}
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
