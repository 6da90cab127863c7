/** What a mark of the strip says when it is pressed: which facets, and whether they share, touch, miss or stand apart. */
import type { SolvedPlan } from "../../../core/plan/solved.ts";
import type { Language } from "../../../words/language.ts";
import { tierName } from "../../../words/names.ts";
import { drawingWords } from "../../messages/drawings.ts";
import { useLanguage, useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";
import type { SkinDrawing } from "./skin-drawing.ts";
import type { SkinLayout } from "./skin-layout.ts";
import type { StripPoint } from "./strip-path.ts";

export interface AnyMark {
  readonly kind: "gap" | "touch" | "corner" | "miss";
  readonly key: string;
  readonly at: StripPoint;
  readonly facets: readonly string[];
  /** The gap or the miss; 0 where they meet. */
  readonly mm: number;
}

/** Every mark of the strip, in the order in which keys go through them. */
export function allMarks({ gaps, touches, corners, misses }: SkinDrawing): AnyMark[] {
  return [
    ...misses.map((m) => ({ ...m, kind: "miss" as const })),
    ...gaps.map((m) => ({ ...m, kind: "gap" as const })),
    ...touches.map((m) => ({ ...m, kind: "touch" as const, mm: 0 })),
    ...corners.map((m) => ({ ...m, kind: "corner" as const, mm: m.missMm })),
  ];
}

/** "Shoulder 4" */
function nameOf(solved: SolvedPlan, id: string, language: Language): string {
  const at = id.lastIndexOf("/");
  return `${tierName(solved.plan, id.slice(0, at), language)} ${id.slice(at + 1)}`;
}

/** Room that the words need; nearer to the right border they stand to the mark's left. */
const ROOM_PX = 280;

export function MarkSaid({
  mark,
  solved,
  layout,
  width,
}: {
  mark: AnyMark | null;
  solved: SolvedPlan;
  layout: SkinLayout;
  /** Of the picture, pixels. */
  width: number;
}) {
  const words = useWords(drawingWords).mark;
  const format = useFormat();
  const language = useLanguage();
  if (!mark) return <output className="mark-said" />;
  const names = mark.facets.map((id) => nameOf(solved, id, language));
  const [x, y] = [mark.at[0] + layout.x, mark.at[1] + layout.y];
  const isLeft = x + ROOM_PX > width;
  return (
    <output
      className="mark-said"
      style={{
        insetBlockEnd: `calc(100% - ${y - 14}px)`,
        ...(isLeft ? { insetInlineEnd: width - x } : { insetInlineStart: x }),
      }}
    >
      {words[mark.kind](names, format.length(mark.mm, 2))}
    </output>
  );
}
