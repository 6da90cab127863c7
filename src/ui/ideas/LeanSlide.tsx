/** How far a traced idea, or all that are held, lean to a side. */
import { Slide } from "../look/Slide.tsx";
import { ideasWords } from "../messages/ideas.ts";
import { useWords } from "../messages/words.tsx";
import { useFormat } from "../use-format.ts";
import { MOST_LEAN } from "./use-leans.ts";

export function LeanSlide({
  label,
  leanDeg,
  onChange,
}: {
  label: string;
  /** Null until it was leant: upright. */
  leanDeg: number | null;
  onChange: (deg: number) => void;
}) {
  const words = useWords(ideasWords);
  const { number } = useFormat();
  return (
    <Slide
      label={label}
      shown={words.leanBy(number(leanDeg ?? 0, 0))}
      value={leanDeg ?? 0}
      min={-MOST_LEAN}
      max={MOST_LEAN}
      step={5}
      onChange={onChange}
    />
  );
}
