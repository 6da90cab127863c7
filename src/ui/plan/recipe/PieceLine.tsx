/** The piece in one line, and the way to its sheet. */
import { Button } from "react-aria-components/Button";
import { stopsOf } from "../../../core/plan/place.ts";
import { planWords } from "../../messages/plan.ts";
import { useWords } from "../../messages/words.tsx";
import { openSheet } from "../../shared/screen.ts";
import { useStudioStore } from "../../studio.ts";
import { useFormat } from "../../use-format.ts";
import { useGlassName } from "../../use-glass-name.ts";
import { usePlan } from "../../use-studio.ts";

export function PieceLine() {
  const studio = useStudioStore();
  const words = useWords(planWords);
  const format = useFormat();
  const plan = usePlan();
  const stops = stopsOf(plan, "front");
  return (
    <Button className="piece-line" onPress={() => openSheet(studio, "piece")}>
      {words.pieceLine(
        format.length(plan.piece.diameterMm),
        useGlassName(),
        stops === null ? words.piece.wheelKind.free : words.stopsOnWheel(String(stops)),
      )}
    </Button>
  );
}
