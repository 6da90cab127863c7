/** One plan on the shelf: its picture and name open it, the rest is behind one word. */
import { Button as AriaButton } from "react-aria-components/Button";
import type { PlanSummary } from "../../state/storage/summaries.ts";
import { Actions } from "../controls/Actions.tsx";
import { libraryWords } from "../messages/library.ts";
import { useWords } from "../messages/words.tsx";
import { useFormat } from "../use-format.ts";
import { useStudio } from "../use-studio.ts";

export interface PlanDeeds {
  readonly open: () => void;
  readonly duplicate: () => void;
  readonly archive: () => void;
  readonly unarchive: () => void;
  readonly remove: () => void;
  readonly restore: () => void;
  readonly erase: () => void;
  readonly saveText: () => void;
}

export function PlanCard({ plan, deeds }: { plan: PlanSummary; deeds: PlanDeeds }) {
  const words = useWords(libraryWords);
  const format = useFormat();
  const isOnBench = useStudio((state) => state.planId === plan.id);
  const name = plan.name || words.unnamed;
  const about = plan.about
    ? words.about(
        format.length(plan.about.diameterMm, 0),
        words.facets(plan.about.facets),
        words.tiers(plan.about.tiers),
      )
    : words.unreadable;
  const isGone = plan.deletedAt !== null;
  const when =
    plan.deletedAt === null
      ? words.saved(format.moment(plan.savedAt))
      : words.removedAt(format.moment(plan.deletedAt));
  const actions = [
    ...(plan.about && !isGone ? [{ id: "copy", words: words.duplicate, run: deeds.duplicate }] : []),
    ...(plan.about ? [] : [{ id: "text", words: words.saveText, run: deeds.saveText }]),
    ...(isGone
      ? [
          { id: "restore", words: words.restore, run: deeds.restore },
          { id: "erase", words: words.erase, run: deeds.erase },
        ]
      : [
          plan.archivedAt === null
            ? { id: "archive", words: words.archive, run: deeds.archive }
            : { id: "unarchive", words: words.unarchive, run: deeds.unarchive },
          { id: "remove", words: words.remove, isDisabled: isOnBench, run: deeds.remove },
        ]),
  ];
  return (
    <li className="shelf-plan">
      <AriaButton
        className="example"
        aria-label={words.open(name)}
        isDisabled={isGone || !plan.about}
        onPress={deeds.open}
      >
        {plan.thumbnail ? (
          <img className="front-drawing" src={plan.thumbnail} alt="" />
        ) : (
          <span className="front-drawing shelf-blank" />
        )}
        <span>
          <b>{name}</b>
          <span className="soft">{about}</span>
          <span className="small">{isOnBench && !isGone ? words.onBench : when}</span>
        </span>
      </AriaButton>
      <Actions label={words.more(name)} shown={words.moreShown} actions={actions} />
    </li>
  );
}
