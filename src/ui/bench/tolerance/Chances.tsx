/** What the simulation says, in words: chance, what matters most, margin, how to stop. */
import { DEFAULT_SPREAD } from "../../../core/bench/chances/spread.ts";
import type { Simulated } from "../../../worker/simulate-bench.ts";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";
import { useSolved } from "../../use-studio.ts";
import { facetNumber, tierName } from "../parts/names.ts";

/** Out of a hundred, never told as certain when only all trials went well. */
const outOf100 = (share: number): number =>
  Math.min(99, Math.max(share > 0 ? 1 : 0, Math.round(share * 100)));

/** The pair that meets least often. */
function WeakestPair({ chances }: Pick<Simulated, "chances">) {
  const words = useWords(benchWords);
  const { length } = useFormat();
  const solved = useSolved();
  const weakest = [...chances.pairs].sort((x, y) => x.meets - y.meets)[0];
  if (!weakest || weakest.meets >= 1 || !solved.facets[weakest.a] || !solved.facets[weakest.b]) return null;
  const name = (k: number) => {
    const facet = solved.facets[k];
    return words.facetOf(tierName(solved.plan, facet.tierIndex, words), String(facetNumber(facet.id)));
  };
  return (
    <p>
      {words.tolerance.weakest(
        name(weakest.a),
        name(weakest.b),
        outOf100(weakest.meets),
        length(weakest.gapSdMm, 2),
      )}
    </p>
  );
}

function OneWay({ answer }: { answer: Simulated }) {
  const { tolerance: words } = useWords(benchWords);
  const { length } = useFormat();
  const { chances, sources, stopBy } = answer;
  const told = sources.filter((one) => one.gapSdMm > 0.0005);
  return (
    <section className="bench-part">
      <h3>{words.ways[stopBy]}</h3>
      <p className="bench-sentence">
        {words.chance(outOf100(chances.allMeet), Math.max(1, Math.round(100 * chances.standardError)))}
      </p>
      {told[0] ? (
        <p>
          {words.matters(words.sources[told[0].source], length(told[0].gapSdMm, 2))}{" "}
          {told.length > 1
            ? words.less(
                told
                  .slice(1)
                  .map((one) => `${words.sources[one.source]} (${length(one.gapSdMm, 2)})`)
                  .join(", "),
              )
            : null}
        </p>
      ) : null}
      <p>
        {chances.marginMm === null
          ? words.noMargin
          : chances.marginMm < 0.005
            ? words.marginNone
            : words.margin(length(chances.marginMm, 2))}
      </p>
      <WeakestPair chances={chances} />
    </section>
  );
}

export function Chances({ answers }: { answers: readonly Simulated[] }) {
  const { tolerance: words } = useWords(benchWords);
  const { length, number } = useFormat();
  const [width, depth] = (["width", "depth"] as const).map((way) =>
    answers.find((one) => one.stopBy === way),
  );
  if (!width || !depth) return null;
  if (width.chances.pairs.length === 0) return <p>{words.noPairs}</p>;
  const [byWidth, byDepth] = [width.chances.allMeet, depth.chances.allMeet];
  const unsure = 2 * Math.hypot(width.chances.standardError, depth.chances.standardError);
  const verdict =
    Math.abs(byWidth - byDepth) <= unsure
      ? words.alike
      : byWidth > byDepth
        ? words.widthSafer
        : words.depthSafer;
  return (
    <>
      <h2>{words.result}</h2>
      <p className="bench-sentence">{verdict}</p>
      <div className="bench-two">
        <OneWay answer={width} />
        <OneWay answer={depth} />
      </div>
      <p className="small soft">
        {words.how(
          number(width.chances.trials, 0),
          length(DEFAULT_SPREAD.widthMm, 2),
          width.chances.pairs.length,
        )}
      </p>
    </>
  );
}
