/** What works for a tier: a list by count, each with a small picture of how it would look; choosing one applies it. */
import { type CSSProperties, useEffect, useState } from "react";
import type { Tier } from "../../../core/plan/document.ts";
import type { Suggestion } from "../../../core/plan/suggest.ts";
import { depthOf } from "../../../state/derived.ts";
import type { drawings } from "../../../words/en/drawings.ts";
import type { Formats } from "../../../words/formats.ts";
import type { Translated } from "../../../words/language.ts";
import { tierName } from "../../../words/names.ts";
import { Button } from "../../controls/Button.tsx";
import { NumberField } from "../../controls/NumberField.tsx";
import { Sheet } from "../../controls/Sheet.tsx";
import { drawingWords } from "../../messages/drawings.ts";
import { useLanguage, useWords } from "../../messages/words.tsx";
import { settledPlan } from "../../settled.ts";
import { useFormat } from "../../use-format.ts";
import { usePlan, useStudio } from "../../use-studio.ts";
import { askSuggestions } from "../mends/plan-worker-client.ts";
import { offerColumns } from "./offer-columns.ts";
import { SuggestPicture } from "./SuggestPicture.tsx";
import "./suggest.css";
import { useStudioStore } from "../../studio.ts";

/** Edges of this part of the radius are looked for until another length is typed. */
const FIRST_EDGE = 0.15;

/** The way into the list, standing under the tier it is about. */
export default function Suggest({ tier }: { tier: Tier }) {
  const [isOpen, setOpen] = useState(false);
  const words = useWords(drawingWords);
  return (
    <>
      <Button onPress={() => setOpen(true)}>{words.suggest.open}</Button>
      {isOpen ? (
        <Sheet title={words.suggest.open} onClose={() => setOpen(false)} wide>
          <SuggestList tier={tier} onChosen={() => setOpen(false)} />
        </Sheet>
      ) : null}
    </>
  );
}

function useSuggestions(tierIndex: number, edgeMm: number) {
  const plan = usePlan();
  const [state, setState] = useState<{ found: readonly Suggestion[]; isDone: boolean }>({
    found: [],
    isDone: false,
  });
  useEffect(() => {
    setState({ found: [], isDone: false });
    let isCurrent = true;
    const asked = askSuggestions(plan, tierIndex, { edgeMm }, (some) =>
      setState((old) => ({ ...old, found: [...old.found, ...some] })),
    );
    const finish = () => {
      if (isCurrent) setState((old) => ({ ...old, isDone: true }));
    };
    // a worker that breaks off has found no more
    asked.done.then(finish, finish);
    return () => {
      isCurrent = false;
      asked.stop();
    };
  }, [plan, tierIndex, edgeMm]);
  return state;
}

function SuggestList({ tier, onChosen }: { tier: Tier; onChosen: () => void }) {
  const studio = useStudioStore();
  const plan = usePlan();
  const words = useWords(drawingWords).suggest;
  const language = useLanguage();
  const format = useFormat();
  const radiusMm = plan.piece.diameterMm / 2;
  const [edgeMm, setEdgeMm] = useState(() => Number((radiusMm * FIRST_EDGE).toFixed(1)));
  const tierIndex = plan.tiers.findIndex((t) => t.id === tier.id);
  const { found, isDone } = useSuggestions(tierIndex, edgeMm);
  const dispatch = useStudio((state) => state.dispatch);
  const counts = [...new Set(found.map((s) => s.count))];

  const choose = ({ tier: { count, armAngleDeg, startDeg, depth } }: Suggestion) => {
    dispatch({ type: "change-tier", tierId: tier.id, change: { count, armAngleDeg, startDeg, depth } });
    onChosen();
  };
  return (
    <div className="suggest">
      <p>
        {words.intro(
          tierName(plan, tier.id, language),
          format.length(depthOf(settledPlan(studio), tier.id), 2),
        )}
      </p>
      <NumberField
        label={words.edge}
        value={edgeMm}
        onChange={setEdgeMm}
        min={0.1}
        max={Number((2 * radiusMm).toFixed(1))}
        step={0.1}
        format={(mm) => format.figure(mm).figure}
        parse={format.parseLength}
        unit={format.figure(edgeMm).unit}
      />
      {counts.map((count) => {
        const offers = found.filter((s) => s.count === count);
        return (
          <section key={count} className="suggest-count">
            <h3>{words.facets(String(count))}</h3>
            <ul style={{ "--columns": offerColumns(offers.length) } as CSSProperties}>
              {offers.map((s) => (
                <li key={`${s.kind} ${s.armAngleDeg}`}>
                  <Offer suggestion={s} tierIndex={tierIndex} edgeMm={edgeMm} onChoose={() => choose(s)} />
                </li>
              ))}
            </ul>
          </section>
        );
      })}
      <p role="status" className="suggest-state">
        {isDone ? (found.length === 0 ? words.none : "") : words.looking}
      </p>
    </div>
  );
}

interface OfferProps {
  readonly suggestion: Suggestion;
  readonly tierIndex: number;
  readonly edgeMm: number;
  readonly onChoose: () => void;
}

function kindSaid(
  s: Suggestion,
  edgeMm: number,
  name: (id: string) => string,
  words: Translated<typeof drawings>["suggest"],
  format: Formats,
): string {
  switch (s.kind) {
    case "touch":
      return words.kind.touch;
    case "edge":
      return words.kind.edge(format.length(edgeMm));
    default:
      return words.kind[s.kind](name(s.of ?? ""));
  }
}

function Offer({ suggestion, tierIndex, edgeMm, onChoose }: OfferProps) {
  const plan = usePlan();
  const words = useWords(drawingWords).suggest;
  const language = useLanguage();
  const format = useFormat();
  const angle = format.armAngle(suggestion.armAngleDeg);
  const said = kindSaid(suggestion, edgeMm, (id) => tierName(plan, id, language), words, format);
  return (
    <Button
      className="offer"
      look="outlined"
      aria-label={[
        words.choose(String(suggestion.count), angle, said),
        ...(suggestion.gone > 0 ? [words.gone(suggestion.gone)] : []),
      ].join(", ")}
      onPress={onChoose}
    >
      <SuggestPicture plan={plan} tierIndex={tierIndex} tier={suggestion.tier} />
      <span className="offer-angle">{angle}</span>
      <span className="offer-what">{said}</span>
      <span className="offer-deep">{words.deep(format.length(suggestion.depthMm, 2))}</span>
      {suggestion.gone > 0 ? <span className="offer-gone">{words.gone(suggestion.gone)}</span> : null}
    </Button>
  );
}
