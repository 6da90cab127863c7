/** The wish as sentences; every part can be changed where it stands. */
import { parseNumber } from "../../words/format.ts";
import { Choice } from "../controls/Choice.tsx";
import { NumberField } from "../controls/NumberField.tsx";
import { Sentence } from "../controls/Sentence.tsx";
import { ideasWords } from "../messages/ideas.ts";
import { useWords } from "../messages/words.tsx";
import { useStudioStore } from "../studio.ts";
import { useFormat } from "../use-format.ts";
import { usePlan } from "../use-studio.ts";
import {
  AXES,
  type Draft,
  draftOf,
  LEAST_FACETS,
  leastKept,
  MOST,
  useDraft,
  WANTS,
  type Want,
} from "./draft.ts";
import { GivenWishWords } from "./GivenWishWords.tsx";
import { useWall } from "./wall-store.ts";

const MINUTES = 60;

function useChange(): (fields: Partial<Draft>) => void {
  const studio = useStudioStore();
  return (fields) => draftOf(studio).setState(fields);
}

function Whole({
  label,
  value,
  min,
  max,
  onChange,
}: {
  label: string;
  value: number;
  min: number;
  max: number;
  onChange: (value: number) => void;
}) {
  const { wish } = useWords(ideasWords);
  return (
    <NumberField
      inline
      label={label}
      value={value}
      min={min}
      max={max}
      step={1}
      format={String}
      parse={(text) => {
        const read = parseNumber(text);
        return read !== null && Number.isInteger(read) ? read : null;
      }}
      allowed={wish.whole(String(min), String(max))}
      onChange={onChange}
    />
  );
}

/** What the wish had to give for what hangs, bound by bound; null where it was kept. */
function useGaveWay(): string | null {
  const { gave, sides } = useWords(ideasWords).wish;
  const { number } = useFormat();
  const { gaveWay } = useWall();
  if (!gaveWay) return null;
  const hours = (minutes: number) => number(minutes / MINUTES, 1);
  const { leastTiers, mostTiers, leastFacets, mostFacets, leastTime, mostTime } = gaveWay;
  const said = [
    leastTiers && gave.leastTiers(String(leastTiers[1]), String(leastTiers[0])),
    mostTiers && gave.mostTiers(String(mostTiers[1]), String(mostTiers[0])),
    leastFacets && gave.leastFacets(String(leastFacets[1]), String(leastFacets[0])),
    mostFacets && gave.mostFacets(String(mostFacets[1]), String(mostFacets[0])),
    leastTime && gave.leastTime(hours(leastTime[1]), hours(leastTime[0])),
    mostTime && gave.mostTime(hours(mostTime[1]), hours(mostTime[0])),
    gaveWay.sides && sides[gaveWay.sides],
  ];
  return gave.all(said.filter((one) => one !== undefined).join("; "));
}

const WANT_IDS = Object.keys(WANTS) as Want[];

/** On what, with how many tiers and facets, in what time. */
function WorkSentence() {
  const change = useChange();
  const words = useWords(ideasWords);
  const plan = usePlan();
  const own = useDraft();
  const { length } = useFormat();
  const stops = plan.rig.wheelStops;
  return (
    <p>
      <Sentence
        template={words.wish.work}
        slots={{
          on: words.wish.on(length(plan.piece.diameterMm, 1)),
          wheel: stops === null ? words.wish.noWheel : words.wish.wheel(String(stops)),
          least: (
            <Whole
              label={words.wish.leastTiers}
              value={Math.min(own.leastTiers, own.mostTiers)}
              min={1}
              max={own.mostTiers}
              onChange={(leastTiers) => change({ leastTiers })}
            />
          ),
          tiers: (
            <Whole
              label={words.wish.tiers}
              value={own.mostTiers}
              min={1}
              max={MOST.tiers}
              onChange={(mostTiers) => change({ mostTiers })}
            />
          ),
          facets: (
            <Whole
              label={words.wish.facets}
              value={own.mostFacets}
              min={LEAST_FACETS}
              max={MOST.facets}
              onChange={(mostFacets) => change({ mostFacets })}
            />
          ),
          hours: (
            <Whole
              label={words.wish.hours}
              value={own.mostHours}
              min={1}
              max={MOST.hours}
              onChange={(mostHours) => change({ mostHours })}
            />
          ),
          sides: (
            <Choice
              inline
              label={words.wish.sidesLabel}
              value={own.sides}
              options={[
                { id: "front", words: words.wish.sides.front },
                { id: "both", words: words.wish.sides.both },
              ]}
              onChange={(sides) => change({ sides })}
            />
          ),
        }}
      />
    </p>
  );
}

/** What it should be like. */
function WantSentence() {
  const change = useChange();
  const words = useWords(ideasWords);
  const own = useDraft();
  const wants = WANT_IDS.map((id) => ({ id, words: words.want[id] }));
  return (
    <p>
      <Sentence
        template={words.wish.want}
        slots={{
          want: (
            <Choice
              inline
              label={words.wish.wantLabel}
              value={own.want}
              options={wants}
              onChange={(want) => change(want === own.also ? { want, also: "nothing" } : { want })}
            />
          ),
          also: (
            <Choice
              inline
              label={words.wish.alsoLabel}
              value={own.also}
              options={[
                { id: "nothing" as const, words: words.want.nothing },
                ...wants.filter(({ id }) => id !== own.want),
              ]}
              onChange={(also) => change({ also })}
            />
          ),
        }}
      />
    </p>
  );
}

/** What the wall is spread over. */
function AxesSentence() {
  const change = useChange();
  const words = useWords(ideasWords);
  const own = useDraft();
  const axes = AXES.map((id) => ({ id, words: words.axis[id] }));
  return (
    <p>
      <Sentence
        template={words.wish.axes}
        slots={{
          across: (
            <Choice
              inline
              label={words.wish.acrossLabel}
              value={own.across}
              options={axes.filter(({ id }) => id !== own.up)}
              onChange={(across) => change({ across })}
            />
          ),
          up: (
            <Choice
              inline
              label={words.wish.upLabel}
              value={own.up}
              options={axes.filter(({ id }) => id !== own.across)}
              onChange={(up) => change({ up })}
            />
          ),
        }}
      />
    </p>
  );
}

/** How many of the plan's first tiers stay. */
function KeepSentence() {
  const change = useChange();
  const words = useWords(ideasWords);
  const plan = usePlan();
  const own = useDraft();
  const leastKeep = leastKept(plan);
  return (
    <p>
      <Sentence
        template={words.wish.keep}
        slots={{
          keep: (
            <Whole
              label={words.wish.keepLabel}
              value={Math.min(plan.tiers.length, Math.max(own.keep, leastKeep))}
              min={leastKeep}
              max={plan.tiers.length}
              onChange={(keep) => change({ keep })}
            />
          ),
        }}
      />
    </p>
  );
}

export function WishWords() {
  const { tiers } = usePlan();
  const { given } = useDraft();
  const gave = useGaveWay();
  return (
    <div className="idea-wish">
      {given ? (
        <GivenWishWords {...given} />
      ) : (
        <>
          <WorkSentence />
          <WantSentence />
          <AxesSentence />
          {tiers.length > 0 ? <KeepSentence /> : null}
        </>
      )}
      {gave ? <p role="status">{gave}</p> : null}
    </div>
  );
}
