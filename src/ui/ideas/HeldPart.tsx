/** What is held, side by side under one light; all of it leans together. */
import { useState } from "react";
import type { Plan } from "../../core/plan/document.ts";
import { Button } from "../controls/Button.tsx";
import { ideasWords } from "../messages/ideas.ts";
import { useWords } from "../messages/words.tsx";
import { LeanSlide } from "./LeanSlide.tsx";
import { pictureKey } from "./picture-key.ts";
import { useCanLean, useLeans } from "./use-leans.ts";

interface OneProps {
  readonly plan: Plan;
  readonly picture: string;
  readonly leanDeg: number;
  readonly isLeaning: boolean;
  readonly isPicked: boolean;
  readonly onPick: () => void;
}

function One({ plan, picture, leanDeg, isLeaning, isPicked, onPick }: OneProps) {
  const leans = useLeans(plan, isLeaning);
  return (
    <li>
      <Button className="idea" aria-label={plan.name} aria-pressed={isPicked} onPress={onPick}>
        <img src={(isLeaning ? leans.at(leanDeg) : null) ?? picture} alt="" />
      </Button>
      <p className="small">{plan.name}</p>
    </li>
  );
}

export interface HeldProps {
  readonly held: readonly Plan[];
  /** The browser has no room for them, or refuses. */
  readonly isUnkept: boolean;
  readonly pictures: readonly string[];
  readonly picked: Plan | null;
  readonly onPick: (plan: Plan) => void;
  /** Looks for what lies between the two held last. */
  readonly onBetween: (a: Plan, b: Plan) => void;
}

export function HeldPart({ held, isUnkept, pictures, picked, onPick, onBetween }: HeldProps) {
  const words = useWords(ideasWords);
  const [leanDeg, setLean] = useState<number | null>(null);
  const canLean = useCanLean();
  const [a, b] = held.slice(-2);
  return (
    <section className="idea-part" aria-labelledby="ideas-held">
      <h2 id="ideas-held">{words.held}</h2>
      {isUnkept ? <p role="alert">{words.heldUnkept}</p> : null}
      <ul className="idea-held">
        {held.map((plan, i) => (
          <One
            key={pictureKey(plan)}
            plan={plan}
            picture={pictures[i]}
            leanDeg={leanDeg ?? 0}
            isLeaning={leanDeg !== null}
            isPicked={picked !== null && pictureKey(picked) === pictureKey(plan)}
            onPick={() => onPick(plan)}
          />
        ))}
      </ul>
      <div className="idea-row">
        {canLean ? <LeanSlide label={words.leanAll} leanDeg={leanDeg} onChange={setLean} /> : null}
        {b ? (
          <Button look="outlined" onPress={() => onBetween(a, b)}>
            {words.deeds.between}
          </Button>
        ) : null}
      </div>
    </section>
  );
}
