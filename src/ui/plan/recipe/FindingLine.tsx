/** One finding: told by word and mark, leading to its place, with its mend where there is one. */
import type { PlanFinding } from "../../../core/plan/finding.ts";
import { findingInWords } from "../../../words/findings.ts";
import { Button } from "../../controls/Button.tsx";
import { findingWords } from "../../messages/findings.ts";
import { planWords } from "../../messages/plan.ts";
import { useLanguage, useWords } from "../../messages/words.tsx";
import { useViewport } from "../../piece/viewport.ts";
import { Mends, Quietly } from "../../shared/slots.tsx";
import { useSay } from "../../use-say.ts";
import { useStudio } from "../../use-studio.ts";

export default function FindingLine({ finding }: { finding: PlanFinding }) {
  const { eye } = useViewport();
  const words = useWords(planWords);
  const inWords = findingWords[useLanguage()];
  const say = useSay();
  const select = useStudio((state) => state.select);
  const toll = { stop: words.toll.stops, warn: words.toll.looks, info: words.toll.knows }[finding.severity];
  const place = finding.facets?.[0] ?? null;
  return (
    <li
      className="finding"
      data-severity={finding.severity}
      data-code={finding.code}
      data-tier={finding.tier}
    >
      <p>
        <b className="finding-toll">{toll}.</b> {findingInWords(finding, inWords, say)}
      </p>
      <div className="finding-ways">
        <Quietly>
          <Mends finding={finding} />
        </Quietly>
        {place === null ? null : (
          <Button
            onPress={() => {
              select({ facetId: place });
              eye.showFacet(place);
            }}
          >
            {words.showPlace}
          </Button>
        )}
      </div>
    </li>
  );
}
