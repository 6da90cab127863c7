/** Dragging the picked tier on the piece itself. Lies over the canvas and takes hold before the hand turns the piece. */
import { type PointerEvent, type RefObject, useEffect, useRef } from "react";
import { solved as solvedOf } from "../../state/derived.ts";
import { Readout } from "../plan/drag/Readout.tsx";
import type { DragPicture } from "../plan/drag/tier-hold.ts";
import { useBox } from "../plan/drag/use-box.ts";
import { useTierDrag } from "../plan/drag/use-tier-drag.ts";
import { settledPlan } from "../settled.ts";
import { pieceDrag } from "./piece-drag.ts";
import { facetUnder, type Grip } from "./use-hand.ts";
import { useViewport, type Viewport } from "./viewport.ts";

const NO_MEANING: DragPicture = { meant: () => null, delta: () => 0, reach: () => 0 };

/** What movements of this facet mean, as the piece stands now. */
function meaningOf({ studio, eye }: Viewport, facetId: string, box: HTMLElement): DragPicture {
  const solved = solvedOf(settledPlan(studio));
  const facet = solved.facets.findIndex((one) => one.id === facetId);
  const short = Math.min(box.clientWidth, box.clientHeight);
  return facet < 0 ? NO_MEANING : pieceDrag(eye.getState().view, short, solved, facet);
}

export default function PieceDrag({
  host,
  grip,
}: {
  host: RefObject<HTMLElement | null>;
  grip: RefObject<Grip | null>;
}) {
  const viewport = useViewport();
  const [ref, box] = useBox<HTMLDivElement>();
  const meaning = useRef(NO_MEANING);
  const isHeld = useRef(false);
  const drag = useTierDrag({
    meant: (...given) => meaning.current.meant(...given),
    delta: (...given) => meaning.current.delta(...given),
    reach: (...given) => meaning.current.reach(...given),
  });

  const { grab, surface } = drag;
  useEffect(() => {
    const letGo = (how: () => void) => () => {
      const was = isHeld.current;
      isHeld.current = false;
      if (was) how();
      return was;
    };
    grip.current = {
      take: (event: PointerEvent) => {
        const picture = host.current;
        const { tierId } = viewport.studio.getState().selection;
        if (!picture || tierId === null || event.button !== 0) return false;
        const facetId = facetUnder(viewport, picture, { x: event.clientX, y: event.clientY });
        if (!facetId?.startsWith(`${tierId}/`)) return false;
        meaning.current = meaningOf(viewport, facetId, picture);
        isHeld.current = true;
        grab(event, picture, { tierId, facetId });
        return true;
      },
      move: (event: PointerEvent) => {
        if (isHeld.current) surface.onPointerMove(event);
        return isHeld.current;
      },
      end: letGo(surface.onPointerUp),
      cancel: letGo(surface.onPointerCancel),
    };
    return () => {
      grip.current = null;
    };
  }, [host, grip, grab, surface, viewport]);

  return (
    <div ref={ref} className="piece-labels">
      <Readout live={drag.live} box={box} />
    </div>
  );
}
