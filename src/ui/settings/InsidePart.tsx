/** What is inside the glass, edited beside the piece: a line of the column that opens and closes. */
import { Button } from "react-aria-components/Button";
import { planWords } from "../messages/plan.ts";
import { useWords } from "../messages/words.tsx";
import { screenOf, useScreen } from "../shared/screen.ts";
import { InsideFields, Quietly } from "../shared/slots.tsx";
import { useStudioStore } from "../studio.ts";
import { usePlan, useStudio } from "../use-studio.ts";

export function InsidePart() {
  const studio = useStudioStore();
  const words = useWords(planWords).piece;
  const { piece } = usePlan();
  const dispatch = useStudio((state) => state.dispatch);
  const isOpen = useScreen((state) => state.editsInside);
  const kinds = (piece.inside ?? []).map(({ kind }) => words.insideKinds[kind]);
  return (
    <section className="inside-part" data-open={isOpen || undefined}>
      <Button
        className="piece-line"
        aria-expanded={isOpen}
        onPress={() => screenOf(studio).setState({ editsInside: !isOpen })}
      >
        {kinds.length === 0 ? words.insideEmpty : words.insideHolds(kinds.join(", "))}
      </Button>
      {isOpen ? (
        <Quietly>
          <InsideFields piece={piece} change={(change) => void dispatch({ type: "set-piece", change })} />
        </Quietly>
      ) : null}
    </section>
  );
}
