/** Ready-made plans to begin with. */
import { Button } from "react-aria-components/Button";
import { EXAMPLES } from "../examples.ts";
import { exampleIn, exampleWords } from "../messages/examples.ts";
import { planWords } from "../messages/plan.ts";
import { useWords } from "../messages/words.tsx";
import { openPlan } from "../shared/files.ts";
import { useFormat } from "../use-format.ts";
import { FrontDrawing } from "./FrontDrawing.tsx";
import "./settings.css";
import { useStudioStore } from "../studio.ts";

export default function ExamplesSheet() {
  const studio = useStudioStore();
  const words = useWords(planWords);
  const names = useWords(exampleWords);
  const format = useFormat();
  return (
    <>
      <p className="soft">{words.examples.intro}</p>
      <ul className="examples">
        {EXAMPLES.map((english) => {
          const plan = exampleIn(english, names);
          const facets = plan.tiers.reduce((sum, tier) => sum + tier.count, 0);
          return (
            <li key={plan.name}>
              <Button
                className="example"
                aria-label={words.examples.open(plan.name)}
                onPress={() => openPlan(studio, plan)}
              >
                <FrontDrawing plan={plan} />
                <span>
                  <b>{plan.name}</b>
                  <span className="soft">
                    {format.length(plan.piece.diameterMm, 0)}, {words.facetCount(facets)}
                  </span>
                  <span className="small">{plan.notes}</span>
                </span>
              </Button>
            </li>
          );
        })}
      </ul>
    </>
  );
}
