/** The line between two compared pieces: dragged by the hand, or moved with the arrow keys. */
import { type PointerEvent, useRef } from "react";
import { lookWords } from "../messages/look.ts";
import { planWords } from "../messages/plan.ts";
import { useLanguage, useWords } from "../messages/words.tsx";
import { useStudioStore } from "../studio.ts";
import { setLook, useLook } from "./look-settings.ts";
import { variantName } from "./variant-name.ts";

const KEY_STEP = 0.02;
const clamp = (share: number) => Math.min(0.98, Math.max(0.02, share));

export function DividerLine() {
  const studio = useStudioStore();
  const words = useWords(lookWords).compare;
  const divider = useLook((settings) => settings.divider);
  const shows = useLook((settings) => settings.against !== "nothing");
  const layout = useLook((settings) => settings.layout);
  const against = useLook((settings) => settings.against);
  const own = useLook((settings) => settings.own);
  const other = useLook((settings) => settings.other);
  const otherLook = useLook((settings) => settings.otherLook);
  const look = useWords(lookWords);
  const language = useLanguage();
  const { glasses } = useWords(planWords).piece;
  const line = useRef<HTMLDivElement>(null);
  if (!shows) return null;

  const names = (
    <div className="divider-names">
      <span>{(against === "other" && own?.name) || words.thisPlan}</span>
      <span>
        {against === "uncut"
          ? words.uncut
          : variantName(other?.name ?? words.thisPlan, otherLook, { look, glasses, language })}
      </span>
    </div>
  );
  if (layout === "side") return names;

  const follow = (event: PointerEvent) => {
    const box = line.current?.parentElement?.getBoundingClientRect();
    if (box && event.buttons > 0) setLook(studio, { divider: clamp((event.clientX - box.left) / box.width) });
  };
  return (
    <>
      {names}
      <div
        ref={line}
        className="divider"
        style={{ insetInlineStart: `${divider * 100}%` }}
        role="slider"
        tabIndex={0}
        aria-label={words.line}
        aria-valuenow={Math.round(divider * 100)}
        aria-valuemin={2}
        aria-valuemax={98}
        onPointerDown={(event) => event.currentTarget.setPointerCapture(event.pointerId)}
        onPointerMove={follow}
        onKeyDown={(event) => {
          const step = event.key === "ArrowLeft" ? -KEY_STEP : event.key === "ArrowRight" ? KEY_STEP : 0;
          if (step === 0) return;
          event.preventDefault();
          setLook(studio, { divider: clamp(divider + step) });
        }}
      />
    </>
  );
}
