/** The wall in the order in which one may like it, learned from what was held and thrown away; and how to have that forgotten. */
import { useMemo } from "react";
import { useStore } from "zustand";
import { featuresOf, likingOf, type Taste, tasteOf } from "../../core/ideas/taste.ts";
import type { Plan } from "../../core/plan/document.ts";
import { Button } from "../controls/Button.tsx";
import { ideasWords } from "../messages/ideas.ts";
import { useWords } from "../messages/words.tsx";
import { useStudioStore } from "../studio.ts";
import { forget, marksOf } from "./taste-store.ts";
import type { Hung } from "./wall-store.ts";

/** Places in the list of what hangs, the likeliest to please first; null while that is not known of all. */
function orderOf(taste: Taste | null, hung: readonly Hung[]): readonly number[] | null {
  if (!taste || hung.length === 0) return null;
  const liking = hung.map(({ measures, plan }) =>
    measures ? likingOf(taste, featuresOf(measures, plan.piece.diameterMm / 2)) : Number.NaN,
  );
  if (liking.some(Number.isNaN)) return null;
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
  const studio = useStudioStore();
  const list = useStore(marksOf(studio), (state) => state.list);
  const taste = useMemo(() => tasteOf(list), [list]);
  const order = orderOf(taste, hung);
  const count = list.length;
  if (count === 0) return null;
  return (
    <section className="idea-part" aria-labelledby="ideas-taste">
      <h2 id="ideas-taste">{words.title}</h2>
      <p className="soft">
        {taste ? words.what(count) : words.few(count)}
        {taste && !order && hung.length > 0 ? ` ${words.later}` : null}
      </p>
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
      <Button look="outlined" onPress={() => forget(studio)}>
        {words.forget}
      </Button>
    </section>
  );
}
