/** Offers the way round on a first visit, as a line of the recipe: it covers nothing and goes for good once answered. */
import { Button } from "../controls/Button.tsx";
import { helpWords } from "../messages/help.ts";
import { useWords } from "../messages/words.tsx";
import { beginGuide, leaveGuide, useGuide } from "./guide-state.ts";
import "./help.css";

export default function GuideOffer() {
  const words = useWords(helpWords).guide;
  const isOffered = useGuide((state) => state.at === "offered");
  if (!isOffered) return null;
  return (
    <aside className="guide-offer" aria-label={words.title}>
      <p>{words.offer}</p>
      <div className="guide-presses">
        <Button onPress={leaveGuide}>{words.no}</Button>
        <Button look="outlined" onPress={beginGuide}>
          {words.start}
        </Button>
      </div>
    </aside>
  );
}
