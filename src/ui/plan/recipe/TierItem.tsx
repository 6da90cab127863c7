/** One tier: its name, its sentence, what is true of it, and what stands against it. */
import { useEffect, useRef } from "react";
import type { Finish, Tier } from "../../../core/plan/document.ts";
import { nameOrPlace } from "../../../words/names.ts";
import { Actions } from "../../controls/Actions.tsx";
import { planWords } from "../../messages/plan.ts";
import { useWords } from "../../messages/words.tsx";
import { useIsLate } from "../../settled.ts";
import { FindingLine, Quietly, Suggest } from "../../shared/slots.tsx";
import { useFormat } from "../../use-format.ts";
import { useReport, useSolved, useStudio } from "../../use-studio.ts";
import { NameField } from "./NameField.tsx";
import { TierSentence } from "./TierSentence.tsx";
import { tierTruth } from "./tier-truth.ts";
import { truthInWords } from "./truth-words.ts";

const FINISHES: readonly Finish[] = ["polished", "prepolished", "ground"];

function useTierActions(tier: Tier, index: number) {
  const words = useWords(planWords);
  const dispatch = useStudio((state) => state.dispatch);
  const select = useStudio((state) => state.select);
  const last = useStudio((state) => state.plan.tiers.length - 1);
  const move = (to: number) => dispatch({ type: "move-tier", tierId: tier.id, to });
  return [
    {
      id: "duplicate",
      words: words.duplicate,
      run: () =>
        dispatch({ type: "duplicate-tier", tierId: tier.id, change: { name: words.copyOf(tier.name) } }),
    },
    { id: "earlier", words: words.earlier, isDisabled: index === 0, run: () => move(index - 1) },
    { id: "later", words: words.later, isDisabled: index === last, run: () => move(index + 1) },
    ...FINISHES.filter((finish) => finish !== (tier.finish ?? "polished")).map((finish) => ({
      id: finish,
      words: words.leaveAs[finish],
      run: () => dispatch({ type: "change-tier", tierId: tier.id, change: { finish } }),
    })),
    {
      id: "remove",
      words: words.remove,
      run: () => {
        select({});
        dispatch({ type: "remove-tier", tierId: tier.id });
      },
    },
  ];
}

/**
 * Brings the sentence into sight when its tier is picked elsewhere, without taking the focus. One that is picked by a press
 * on itself stays where it is: it would slip away under the hand, and a scroll closes the menu that was just opened.
 */
function useShownWhenPicked(isPicked: boolean) {
  const item = useRef<HTMLLIElement>(null);
  const isPickedHere = useRef(false);
  useEffect(() => {
    if (isPicked && !isPickedHere.current) item.current?.scrollIntoView({ block: "nearest" });
    isPickedHere.current = false;
  }, [isPicked]);
  return { item, isPickedHere };
}

export function TierItem({ tier, index }: { tier: Tier; index: number }) {
  const words = useWords(planWords);
  const format = useFormat();
  const report = useReport();
  const isLate = useIsLate();
  const solved = useSolved();
  const dispatch = useStudio((state) => state.dispatch);
  const select = useStudio((state) => state.select);
  const setHover = useStudio((state) => state.setHover);
  const isPicked = useStudio((state) => state.selection.tierId === tier.id);
  const isHovered = useStudio((state) => state.hover.tierId === tier.id);
  const { item, isPickedHere } = useShownWhenPicked(isPicked);
  const pickHere = () => {
    if (isPicked) return;
    isPickedHere.current = true;
    select({ tierId: tier.id });
  };
  const actions = useTierActions(tier, index);
  const { met: isMet, depthMm } = solved.tiers[index] ?? { met: true, depthMm: 0 };
  const findings = report.findings.filter((finding) => finding.tier === tier.id);
  const isLost = findings.some(({ code }) => code === "lost");

  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: focusing any field of the sentence picks the tier by keyboard
    <li
      ref={item}
      className="tier"
      data-picked={isPicked || undefined}
      data-hovered={isHovered || undefined}
      data-unmet={!isMet || undefined}
      onPointerEnter={() => setHover({ tierId: tier.id })}
      onPointerLeave={() => setHover({})}
      onClick={pickHere}
      onFocus={pickHere}
    >
      <div className="tier-head">
        <span className="tier-place" aria-hidden="true">
          {index + 1}
        </span>
        <NameField
          className="tier-name"
          label={words.tierName}
          value={tier.name}
          placeholder={words.tierNumber(index + 1)}
          onChange={(name) => dispatch({ type: "change-tier", tierId: tier.id, change: { name } })}
        />
        <Actions
          label={words.tierActions(nameOrPlace(tier.name, index, words.tierNumber))}
          shown={words.more}
          actions={actions}
        />
      </div>
      <TierSentence tier={tier} index={index} isMet={isMet} />
      <p className="tier-truth" aria-live={isPicked ? "polite" : undefined}>
        {isLate
          ? words.late
          : isMet || depthMm > 0
            ? truthInWords(tierTruth(report, tier.id), words.truth, format, isLost)
            : words.truth.cant}
      </p>
      {isPicked ? (
        <Quietly>
          <Suggest tier={tier} />
        </Quietly>
      ) : null}
      {findings.length > 0 ? (
        <ul className="findings">
          <Quietly>
            {findings.map((finding) => (
              <FindingLine
                key={`${finding.code} ${finding.facets?.join(" ") ?? ""} ${JSON.stringify(finding.data)}`}
                finding={finding}
              />
            ))}
          </Quietly>
        </ul>
      ) : null}
    </li>
  );
}
