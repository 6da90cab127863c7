/** One idea: its picture, its numbers in words, and what can be done with it. */
import { useEffect, useState } from "react";
import type { Measures } from "../../core/measure/measures.ts";
import type { Plan } from "../../core/plan/document.ts";
import { Button } from "../controls/Button.tsx";
import { setLook } from "../look/look-settings.ts";
import { ideasWords } from "../messages/ideas.ts";
import { useWords } from "../messages/words.tsx";
import { showToCustomer, tell } from "../shared/screen.ts";
import { useStudioStore } from "../studio.ts";
import { useFormat } from "../use-format.ts";
import { useSession } from "../visit.ts";
import { measureIdea } from "./find-ideas.ts";
import { LeanSlide } from "./LeanSlide.tsx";
import { takenPlan } from "./taken-plan.ts";
import { useCanLean, useLeans } from "./use-leans.ts";

const MINUTES = 60;

/** Measures of a plan, null until they are there. */
function useMeasures(plan: Plan): Measures | null {
  const [found, setFound] = useState<{ plan: Plan; measures: Measures } | null>(null);
  useEffect(() => {
    const stop = new AbortController();
    measureIdea(plan, stop.signal).then(
      (measures) => setFound({ plan, measures }),
      (error: unknown) => {
        if (!stop.signal.aborted) throw error;
      },
    );
    return () => stop.abort();
  }, [plan]);
  return found?.plan === plan ? found.measures : null;
}

function Numbers({ measures }: { measures: Measures }) {
  const words = useWords(ideasWords).one;
  const { number, length } = useFormat();
  const share = (value: number) => `${number(Math.round(100 * value), 0)}\u00a0%`;
  const { minutes, facets, tiers, skinShare, leastFacetMm, back, through, inside, images, sparkle } =
    measures;
  const counts = [facets, tiers] as const;
  const said = [
    minutes === null ? words.timeUnknown(...counts) : words.time(number(minutes / MINUTES, 1), ...counts),
    words.skin(share(skinShare), length(leastFacetMm ?? 0, 1)),
    words.light(share(back), share(through)),
    ...(inside > 0 ? [words.inside(share(inside), images)] : []),
    words.sparkle(`${number(sparkle, 1)}\u00a0%`),
  ];
  return (
    <>
      <ul className="idea-said">
        {said.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <p className="small">{words.counted}</p>
    </>
  );
}

interface IdeaProps {
  readonly plan: Plan;
  readonly picture: string;
  readonly isHeld: boolean;
  readonly onHold: () => void;
  readonly onThrow: () => void;
  readonly onMore: () => void;
  /** More with the same counts on the front. */
  readonly onFront: () => void;
}

/** The picture, and as many as there are of it leaning once one lets it lean. */
function Leaning({ plan, picture }: { plan: Plan; picture: string }) {
  const words = useWords(ideasWords);
  const [leanDeg, setLean] = useState<number | null>(null);
  const leans = useLeans(plan, leanDeg !== null);
  const canLean = useCanLean();
  const shown = (leanDeg === null ? null : leans.at(leanDeg)) ?? picture;
  return (
    <div className="idea-leaning">
      <img src={shown} alt="" />
      {canLean ? (
        <LeanSlide label={words.lean} leanDeg={leanDeg} onChange={setLean} />
      ) : (
        <p className="small">{words.leanUntraced}</p>
      )}
      <p className="small" role="status">
        {leanDeg !== null && leans.done < leans.of ? words.leaning(leans.done, leans.of) : ""}
      </p>
    </div>
  );
}

export function IdeaPart({ plan, picture, isHeld, onHold, onThrow, onMore, onFront }: IdeaProps) {
  const words = useWords(ideasWords);
  const { armAngle } = useFormat();
  const studio = useStudioStore();
  const session = useSession();
  const measures = useMeasures(plan);
  const [said, say] = useState("");
  const { deeds, one } = words;
  const take = () => {
    const { plan: taken, isWhole } = takenPlan(studio.getState().plan, plan);
    if (!studio.getState().dispatch({ type: "replace-plan", plan: taken }).ok) return;
    studio.getState().go("plan");
    tell(studio, { tone: "said", text: isWhole ? deeds.takenWhole : deeds.taken });
  };
  const shelve = () => {
    if (!session) return;
    session.library.keep(null, plan, { undo: [], redo: [] }).then(
      ({ kept }) => say(kept ? deeds.shelved : deeds.failed),
      () => say(deeds.failed),
    );
  };
  const lay = () => {
    setLook(studio, { other: { id: "idea", name: plan.name, plan }, against: "other", layout: "side" });
    studio.getState().go("look");
  };
  return (
    <section className="idea-one" aria-label={one.title}>
      <Leaning plan={plan} picture={picture} />
      <div className="idea-about">
        <h2>{plan.name}</h2>
        <p className="soft">
          {plan.tiers
            .map((t) => one.tier(String(t.count), armAngle(t.armAngleDeg), one.sides[t.side]))
            .join(" · ")}
        </p>
        <div className="idea-deeds">
          <Button look="outlined" onPress={take}>
            {deeds.take}
          </Button>
          <Button look="outlined" onPress={onMore}>
            {deeds.more}
          </Button>
          <Button look="outlined" onPress={onFront}>
            {deeds.front}
          </Button>
          <Button look="outlined" aria-pressed={isHeld} onPress={onHold}>
            {isHeld ? deeds.letGo : deeds.hold}
          </Button>
          <Button look="outlined" onPress={onThrow}>
            {deeds.away}
          </Button>
          <Button look="outlined" onPress={lay}>
            {deeds.beside}
          </Button>
          <Button look="outlined" isDisabled={!session} onPress={shelve}>
            {deeds.shelf}
          </Button>
          <Button look="outlined" onPress={() => showToCustomer(studio, plan)}>
            {deeds.customer}
          </Button>
        </div>
        <p role="status">{said}</p>
        {measures ? <Numbers measures={measures} /> : <p className="soft">{one.measuring}</p>}
      </div>
    </section>
  );
}
