/** Whether the plan meets, in one line that stays in sight, and the way to the first cause. */
import { Button } from "react-aria-components/Button";
import { showCause, useVerdict } from "../shared/verdict-said.ts";
import { useStudioStore } from "../studio.ts";

export default function VerdictLine() {
  const studio = useStudioStore();
  const { verdict, said } = useVerdict();
  const hasWay = verdict.tier !== null || verdict.code !== null;
  return (
    <div className="verdict" data-verdict={verdict.kind}>
      {hasWay ? (
        <Button className="verdict-way" onPress={() => showCause(studio, verdict)}>
          {said}
        </Button>
      ) : (
        <p>{said}</p>
      )}
    </div>
  );
}
