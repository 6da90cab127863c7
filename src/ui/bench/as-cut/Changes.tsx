/** What a mend changes, tier by tier, and whether everything still meets. */
import type { Mended } from "../../../core/bench/as-cut/mend-cut.ts";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";
import { tierNameOf } from "../parts/names.ts";

export function Changes({ mended }: { mended: Mended }) {
  const words = useWords(benchWords);
  const { length } = useFormat();
  const say = (mm: number) => length(Math.abs(mm), 2);
  return (
    <>
      <ul className="bench-lines">
        {mended.changes.map((change) => (
          <li key={change.tier}>
            {words.asCut.change(
              tierNameOf(mended.plan, change.tier, words),
              say(change.deeperMm),
              change.deeperMm >= 0,
              say(change.widerMm),
              change.widerMm >= 0,
            )}{" "}
            {change.met ? null : words.asCut.cantMeet}
          </li>
        ))}
      </ul>
      <p>{mended.stillMeets ? words.asCut.stillMeets : words.asCut.noLongerMeets(mended.lost.length)}</p>
    </>
  );
}
