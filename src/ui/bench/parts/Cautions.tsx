/** Cautions, short, at the place where the step happens. */
import type { Caution } from "../../../core/bench/order/cautions.ts";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";

export function Cautions({ list }: { list: readonly Caution[] }) {
  const words = useWords(benchWords);
  if (list.length === 0) return null;
  return (
    <ul className="bench-cautions" aria-label={words.takeCare}>
      {list.map((caution) => (
        <li key={caution}>{words.cautions[caution]}</li>
      ))}
    </ul>
  );
}
