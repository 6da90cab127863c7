/** Set-up: the wheel, how each side is held, arm and lap, abrasives; beside them the rig to scale in the tier in hand. */
import type { Bench } from "../../../core/bench/bench.ts";
import { ArmAndLap } from "./ArmAndLap.tsx";
import { Sides } from "./Sides.tsx";
import { StageList } from "./StageList.tsx";
import { TierInHand } from "./TierInHand.tsx";
import { Wheel } from "./Wheel.tsx";

export function SetUpPart({ bench }: { bench: Bench | null }) {
  return (
    <div className="bench-two">
      <div className="bench-column">
        <Wheel />
        <ArmAndLap />
        <StageList />
        <Sides />
      </div>
      <aside className="bench-beside">
        <TierInHand bench={bench} />
      </aside>
    </div>
  );
}
