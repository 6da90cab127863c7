/**
 * Parts that one place puts into another and that the page does not open on, each in its own chunk, loaded when first shown.
 * Pictures of the piece fill their box and size themselves by it. The traced picture is laid over the drawn piece on Look.
 * Places and sheets as wholes stand in `app/place-pages.ts` and `app/sheet-bodies.ts`.
 */
import { lazy, type ReactNode, Suspense } from "react";

/** What every sheet is given; it may leave it. */
export interface SheetBodyProps {
  readonly onClose: () => void;
}

/** A `Suspense` boundary without a placeholder, around a part that stands in the middle of something: until it is there, nothing, and the rest stays where it is. */
export function Quietly({ children }: { children: ReactNode }) {
  return <Suspense fallback={null}>{children}</Suspense>;
}

export const LookPicture = lazy(() => import("../look/LookPicture.tsx"));
/** Mends of one finding, as buttons that say their effect. */
export const Mends = lazy(() => import("../plan/mends/Mends.tsx"));
/** One finding in words, with the way to its place. */
export const FindingLine = lazy(() => import("../plan/recipe/FindingLine.tsx"));
/** The way to the counts and angles that work for one tier. */
export const Suggest = lazy(() => import("../plan/suggest/Suggest.tsx"));
/** Beside a field one edits: the angles or counts with which everything meets. */
export const MeetingBand = lazy(() => import("../plan/meeting/MeetingBand.tsx"));
/** Fields of what is inside the glass, in the column beside the piece. */
export const InsideFields = lazy(() => import("../settings/InsideFields.tsx"));
/** Fields of the glass's colour and layers, likewise. */
export const GlassFields = lazy(() => import("../settings/glass/GlassFields.tsx"));
/** The piece after each facet, to leaf through. */
export const Diary = lazy(() => import("../plan/diary/Diary.tsx"));
