/** The picked facet's numbers, over the picture. */

import { engravedStop, stopLabel } from "../../core/bench/rig/set-up.ts";
import { tierName } from "../../words/names.ts";
import { Button } from "../controls/Button.tsx";
import { planWords } from "../messages/plan.ts";
import { useLanguage, useWords } from "../messages/words.tsx";
import { openSheet } from "../shared/screen.ts";
import { useStudioStore } from "../studio.ts";
import { useFormat } from "../use-format.ts";
import { useReport, useStudio } from "../use-studio.ts";
import { stepFacet } from "./keys.ts";
import { useViewport } from "./viewport.ts";

function Measure({ mm, digits, what }: { mm: number; digits: number; what: string }) {
  const { figure, unit } = useFormat().figure(mm, digits);
  return (
    <span className="facet-number">
      <span className="figure">{figure}</span>
      <span className="unit">{unit}</span> <span className="soft">{what}</span>
    </span>
  );
}

export function FacetLine() {
  const studio = useStudioStore();
  const viewport = useViewport();
  const words = useWords(planWords).card;
  const language = useLanguage();
  const format = useFormat();
  const facetId = useStudio((state) => state.selection.facetId);
  const plan = useStudio((state) => state.plan);
  const facet = useReport().facets.find((one) => one.id === facetId);
  const tier = plan.tiers.find((one) => one.id === facet?.tier);
  if (!facet || !tier) return null;
  const place = facet.id.slice(facet.id.lastIndexOf("/") + 1);
  const where =
    facet.wheelStop === null
      ? words.at(format.degrees(facet.azimuthDeg))
      : words.stop(stopLabel(plan, tier.side, engravedStop(plan, tier.side, facet.wheelStop)));
  return (
    <section className="facet-line" aria-live="polite">
      <h2>
        {words.title(tierName(plan, tier.id, language), Number(place), tier.count)}
        <span className="soft">, {where}</span>
      </h2>
      {facet.swallowed ? (
        <p>{words.swallowed}</p>
      ) : (
        <p className="facet-numbers">
          <Measure mm={facet.widthMm} digits={1} what={words.wide} />
          <Measure mm={facet.heightMm} digits={1} what={words.high} />
          <Measure mm={facet.depthMm} digits={2} what={words.deep} />
        </p>
      )}
      <div className="facet-ways">
        <Button className="facet-step" onPress={() => stepFacet(viewport, -1)}>
          {words.previous}
        </Button>
        <Button className="facet-step" onPress={() => stepFacet(viewport, 1)}>
          {words.next}
        </Button>
        {!facet.swallowed ? <Button onPress={() => openSheet(studio, "card")}>{words.open}</Button> : null}
      </div>
    </section>
  );
}
