/** The wall: five columns and four rows of two measures, in each place the best that was found; on a phone each row is swiped along. */
import type { CSSProperties } from "react";
import { COLUMNS, ROWS } from "../../core/ideas/wall.ts";
import type { Plan } from "../../core/plan/document.ts";
import { Button } from "../controls/Button.tsx";
import { ideasWords } from "../messages/ideas.ts";
import { useWords } from "../messages/words.tsx";
import { useDraft } from "./draft.ts";
import type { Hung } from "./wall-store.ts";

export interface WallGridProps {
  readonly hung: readonly Hung[];
  readonly pictures: readonly string[];
  readonly picked: Plan | null;
  readonly isShown: (plan: Plan) => boolean;
  readonly onPick: (plan: Plan) => void;
}

export function WallGrid({ hung, pictures, picked, isShown, onPick }: WallGridProps) {
  const words = useWords(ideasWords);
  const { across, up } = useDraft();
  const at = (x: number, y: number) =>
    hung.findIndex(({ cell, plan }) => cell[0] === x && cell[1] === y && isShown(plan));
  const rows = Array.from({ length: ROWS }, (_, k) => ROWS - 1 - k);
  return (
    <section className="idea-wall" aria-label={words.wall}>
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
    </section>
  );
}
