/**
 * What other parts of the app put into the frame and the page does not open on, each in its own chunk, loaded when its place
 * is first entered.
 * Pictures of the piece (profile, skin) fill their box and size themselves by it. A place's page is the column or page beside
 * the piece; Look's stage is laid over the piece and draws the traced picture there. Sheets may take `onClose`.
 */
import { type ComponentType, lazy, type ReactNode, Suspense } from "react";
import type { SheetName } from "./view.ts";

export interface SheetBodyProps {
  readonly onClose: () => void;
}

/** Around a part that stands in the middle of something: until it is there, nothing, and the rest stays where it is. */
export function Quietly({ children }: { children: ReactNode }) {
  return <Suspense fallback={null}>{children}</Suspense>;
}

export const LookPage = lazy(() => import("../look/LookPage.tsx"));
export const LookStage = lazy(() => import("../look/LookStage.tsx"));
export const BenchPage = lazy(() => import("../bench/BenchPage.tsx"));
export const IdeasPage = lazy(() => import("../ideas/IdeasPage.tsx"));
/** Why an edit was refused. */
export const RefusedLine = lazy(() => import("./RefusedLine.tsx"));
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

export const SHEETS: Readonly<Record<SheetName, ComponentType<SheetBodyProps>>> = {
  plans: lazy(() => import("../library/LibrarySheet.tsx")),
  models: lazy(() => import("../library/ModelsSheet.tsx")),
  customer: lazy(() => import("../customer/CustomerSheet.tsx")),
  film: lazy(() => import("../film/FilmSheet.tsx")),
  variants: lazy(() => import("../film/VariantsSheet.tsx")),
  help: lazy(() => import("../help/HelpSheet.tsx")),
  card: lazy(() => import("../plan/card/FacetCard.tsx")),
  examples: lazy(() => import("../settings/ExamplesSheet.tsx")),
  piece: lazy(() => import("../settings/PieceSheet.tsx")),
  settings: lazy(() => import("../settings/SettingsSheet.tsx")),
  keys: lazy(() => import("../settings/KeysSheet.tsx")),
};
