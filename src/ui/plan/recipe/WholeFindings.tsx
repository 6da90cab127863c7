/** What is true of the whole piece: findings of no single tier, and the totals. */

import { planWords } from "../../messages/plan.ts";
import { useWords } from "../../messages/words.tsx";
import { FindingLine, Quietly } from "../../shared/slots.tsx";
import { useFormat } from "../../use-format.ts";
import { useReport } from "../../use-studio.ts";

const MM3_PER_CM3 = 1000;

export function WholeFindings() {
  const words = useWords(planWords);
  const format = useFormat();
  const { findings, totals, facets } = useReport();
  const whole = findings.filter((finding) => finding.tier === undefined);
  if (facets.length === 0 && whole.length === 0) return null;
  const left = facets.filter((facet) => !facet.swallowed).length;
  return (
    <section className="whole">
      <h2>{words.whole}</h2>
      {findings.length === 0 ? <p>{words.wholeGood}</p> : null}
      <ul className="findings">
        <Quietly>
          {whole.map((finding) => (
            <FindingLine key={`${finding.code} ${JSON.stringify(finding.data)}`} finding={finding} />
          ))}
        </Quietly>
      </ul>
      <p className="soft">
        {words.totals(
          words.facetCount(left),
          `${format.number(totals.removedMm3 / MM3_PER_CM3, 2)}\u00a0cm³`,
          `${format.number(totals.massG, 1)}\u00a0g`,
        )}
      </p>
    </section>
  );
}
