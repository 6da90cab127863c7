/** What to do before the first cut, with the cautions that belong there. */
import { cautionsAt } from "../../../core/bench/order/cautions.ts";
import { PREPARATIONS } from "../../../core/bench/order/order.ts";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { Cautions } from "../parts/Cautions.tsx";

export function BeforeFirst() {
  const words = useWords(benchWords);
  return (
    <section className="bench-part" aria-labelledby="bench-before">
      <h2 id="bench-before">{words.work.before}</h2>
      <ol className="bench-numbered">
        {PREPARATIONS.map((what) => (
          <li key={what}>{words.preparations[what]}</li>
        ))}
      </ol>
      <Cautions list={cautionsAt("prepare")} />
    </section>
  );
}
