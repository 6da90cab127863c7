/**
 * Offers the way round on a first visit, as a line of the recipe: it covers nothing and goes for good once answered. Beside
 * a plan that is already cut, a newcomer finds an uncut marble here too, without looking for it in the menu.
 */

import { Button } from "../controls/Button.tsx";
import { planWords } from "../messages/plan.ts";
import { shellWords } from "../messages/shell.ts";
import { useWords } from "../messages/words.tsx";
import { beginFresh } from "../shared/files.ts";
import { useStudio } from "../use-studio.ts";
import { beginGuide, leaveGuide, useGuide } from "./guide-state.ts";
import "./help.css";
import { useViewport } from "../piece/viewport.ts";

export default function GuideOffer() {
  const viewport = useViewport();
  const { studio } = viewport;
  const { menu, guideOffer: words } = useWords(shellWords);
  const { fresh } = useWords(planWords);
  const isCut = useStudio((state) => state.plan.tiers.length > 0);
  const isOffered = useGuide((state) => state.at === "offered");
  if (!isOffered) return null;
  return (
    <aside className="guide-offer" aria-label={words.title}>
      <p>{words.offer}</p>
      <div className="guide-presses">
        <Button look="outlined" onPress={() => void beginGuide(viewport)}>
          {words.start}
        </Button>
        <Button onPress={() => leaveGuide(studio)}>{words.no}</Button>
        {isCut ? <Button onPress={() => beginFresh(studio, fresh)}>{menu.fresh}</Button> : null}
      </div>
    </aside>
  );
}
