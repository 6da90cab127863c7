/** The wall in the order in which one may like it, learned from what was held and thrown away; and how to have that forgotten. */
import { useMemo } from "react";
import { useStore } from "zustand";
import { featuresOf, likingOf, tasteOf } from "../../core/ideas/taste.ts";
import type { Plan } from "../../core/plan/document.ts";
import { Button } from "../controls/Button.tsx";
import { ideasWords } from "../messages/ideas.ts";
import { useWords } from "../messages/words.tsx";
import { forget, marks } from "./taste-store.ts";
import { type Hung, useWall } from "./wall-store.ts";

/** Places in the list of what hangs, the likeliest to please first; null while nothing is known of the person or the ideas. */
function useOrder(hung: readonly Hung[]): readonly number[] | null {
  const list = useStore(marks, (state) => state.list);
  const { answer } = useWall();
  const taste = useMemo(() => tasteOf(list), [list]);
  if (!taste || !answer || answer.ideas.length !== hung.length) return null;
  const liking = answer.ideas.map(({ measures, plan }) =>
    likingOf(taste, featuresOf(measures, plan.piece.diameterMm / 2)),
  );
  return hung.map((_, i) => i).sort((a, b) => liking[b] - liking[a] || a - b);
}

export interface TasteProps {
  readonly hung: readonly Hung[];
  readonly pictures: readonly string[];
  readonly isShown: (plan: Plan) => boolean;
  readonly onPick: (plan: Plan) => void;
}

export function TastePart({ hung, pictures, isShown, onPick }: TasteProps) {
  const words = useWords(ideasWords).taste;
  const count = useStore(marks, (state) => state.list.length);
  const order = useOrder(hung);
  if (count === 0) return null;
  return (
    <section className="idea-part" aria-labelledby="ideas-taste">
      <h2 id="ideas-taste">{words.title}</h2>
      <p className="soft">{order ? words.what(count) : words.few(count)}</p>
      {order ? (
        <ol className="idea-strip">
          {order
            .filter((i) => isShown(hung[i].plan))
            .map((i) => (
              <li key={hung[i].cell.join()}>
                <Button className="idea" aria-label={hung[i].plan.name} onPress={() => onPick(hung[i].plan)}>
                  <img src={pictures[i]} alt="" />
                </Button>
              </li>
            ))}
        </ol>
      ) : null}
      <Button look="outlined" onPress={forget}>
        {words.forget}
      </Button>
    </section>
  );
}
