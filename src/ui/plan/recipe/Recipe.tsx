/** The recipe: the tiers in cutting order as sentences that can be edited where they stand. */
import { lazy, Suspense, useMemo } from "react";
import { COUNTS } from "../../../core/plan/limits.ts";
import { Button } from "../../controls/Button.tsx";
import GuideOffer from "../../help/GuideOffer.tsx";
import { planWords } from "../../messages/plan.ts";
import { shellWords } from "../../messages/shell.ts";
import { useWords } from "../../messages/words.tsx";
import { useViewport } from "../../piece/viewport.ts";
import { GlassPart } from "../../settings/GlassPart.tsx";
import { InsidePart } from "../../settings/InsidePart.tsx";
import { useStudio } from "../../use-studio.ts";
import { addTier } from "../drag/drag-host.ts";
import { NameField } from "./NameField.tsx";
import { nextTier } from "./next-tier.ts";
import { PieceLine } from "./PieceLine.tsx";
import { TierItem } from "./TierItem.tsx";
import { WholeFindings } from "./WholeFindings.tsx";
import "./recipe.css";

const TermLinks = lazy(() => import("../../help/TermLinks.tsx"));

export function Recipe() {
  const viewport = useViewport();
  const words = useWords(planWords);
  const shell = useWords(shellWords);
  const plan = useStudio((state) => state.plan);
  const dispatch = useStudio((state) => state.dispatch);
  const { tiers } = plan;

  const next = useMemo(() => nextTier(plan, words.newTier(plan.tiers.length + 1)), [plan, words]);

  return (
    <div className="recipe">
      <h1 className="recipe-title">
        <NameField
          label={shell.planName}
          value={plan.name}
          placeholder={shell.unnamed}
          onChange={(name) => dispatch({ type: "set-name", name })}
        />
      </h1>
      <PieceLine />
      <GlassPart />
      <InsidePart />
      <GuideOffer />
      {tiers.length === 0 ? (
        <p className="recipe-empty">
          {words.uncut} <span className="by-profile">{words.uncutPull}</span>
          <span className="by-button">{words.uncutAdd}</span>
        </p>
      ) : null}
      <ol className="tiers" aria-label={words.recipe}>
        {tiers.map((tier, index) => (
          <TierItem key={tier.id} tier={tier} index={index} />
        ))}
      </ol>
      {next ? (
        <Button look={tiers.length === 0 ? "strong" : "outlined"} onPress={() => addTier(viewport, next)}>
          {tiers.length === 0 ? words.addFirst : words.addTier}
        </Button>
      ) : (
        <p className="recipe-empty">{words.planFull(COUNTS.tiers, COUNTS.facets)}</p>
      )}
      <WholeFindings />
      <Suspense fallback={null}>
        <TermLinks terms={["tier", "arm", "stop", "depth", "meet", "corner", "mark"]} />
      </Suspense>
    </div>
  );
}
