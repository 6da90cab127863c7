/**
 * The wall: five columns and four rows of two measures, in each place the best that was found; on a phone each row is swiped
 * along. What a row or a column stands for is said beside it.
 */
import { type CSSProperties, Fragment } from "react";
import { COLUMNS, ROWS } from "../../core/ideas/wall.ts";
import type { Plan } from "../../core/plan/document.ts";
import { Button } from "../controls/Button.tsx";
import { ideasWords } from "../messages/ideas.ts";
import { useWords } from "../messages/words.tsx";
import type { Axis } from "./draft.ts";
import { pictureKey } from "./picture-key.ts";
import { useMeasureSaid } from "./use-measure-said.ts";
import { type Hung, useWall } from "./wall-store.ts";

export interface WallGridProps {
  readonly hung: readonly Hung[];
  readonly pictures: readonly string[];
  readonly picked: Plan | null;
  readonly isShown: (plan: Plan) => boolean;
  readonly onPick: (plan: Plan) => void;
}

/** From where to where a part of an axis goes, as a person reads it. */
function useParts(axis: Axis | undefined, edges: readonly number[] | undefined): readonly string[] {
  const { span } = useMeasureSaid();
  if (!axis || !edges) return [];
  return edges.slice(1).map((to, k) => span(axis, Math.max(0, edges[k]), Math.max(0, to)));
}

export function WallGrid({ hung, pictures, picked, isShown, onPick }: WallGridProps) {
  const words = useWords(ideasWords);
  const { spread } = useWall();
  const across = useParts(spread?.across, spread?.edges.across);
  const up = useParts(spread?.up, spread?.edges.up);
  const at = (x: number, y: number) =>
    hung.findIndex(({ cell, plan }) => cell[0] === x && cell[1] === y && isShown(plan));
  const key = picked && pictureKey(picked);
  const rows = Array.from({ length: ROWS }, (_, k) => ROWS - 1 - k);
  const columns = Array.from({ length: COLUMNS }, (_, x) => x);
  return (
    <section className="idea-wall" aria-label={words.wall} style={{ "--columns": COLUMNS } as CSSProperties}>
      {rows.map((y) => (
        <Fragment key={y}>
          <p className="idea-axis" id={`ideas-row-${y}`}>
            {spread ? words.axisPart(words.axis[spread.up], up[y]) : null}
          </p>
          <ul aria-labelledby={`ideas-row-${y}`} data-bare={columns.every((x) => at(x, y) < 0) || undefined}>
            {columns.map((x) => {
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
                    aria-pressed={pictureKey(plan) === key}
                    aria-label={plan.name}
                    onPress={() => onPick(plan)}
                  >
                    <img src={pictures[i]} alt="" />
                  </Button>
                  <p className="idea-axis idea-under">
                    {spread ? words.axisPart(words.axis[spread.across], across[x]) : null}
                  </p>
                </li>
              );
            })}
          </ul>
        </Fragment>
      ))}
      <div className="idea-along">
        <p className="idea-axis">{spread ? words.axisAcross(words.axis[spread.across]) : null}</p>
        <div aria-hidden="true">
          {across.map((part) => (
            <span key={part} className="idea-axis">
              {part}
            </span>
          ))}
        </div>
      </div>
    </section>
  );
}
