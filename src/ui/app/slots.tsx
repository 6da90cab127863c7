/**
 * What other parts of the app put into the frame, each in its own chunk, loaded when its place is first entered.
 * Pictures of the piece (profile, skin) fill their box and size themselves by it. A place's page is the column or page beside
 * the piece; its stage, when it has one, is laid over the piece (Look draws the traced picture there). Sheets get `onClose`.
 */
import { type ComponentType, lazy, type ReactNode, Suspense } from "react";
import type { Tier } from "../../core/plan/document.ts";
import type { Finding } from "../../core/plan/solved.ts";
import type { SheetName } from "./view.ts";

export interface SheetBodyProps {
  readonly onClose: () => void;
}

type Loader<P> = () => Promise<{ readonly default: ComponentType<P> }>;

const found = import.meta.glob([
  "../look/LookPage.tsx",
  "../look/LookStage.tsx",
  "../bench/BenchPage.tsx",
  "../plan/profile/Profile.tsx",
  "../plan/skin/Skin.tsx",
  "../plan/card/FacetCard.tsx",
  "../plan/mends/Mends.tsx",
  "../plan/suggest/Suggest.tsx",
  "../plan/diary/Diary.tsx",
  "../library/LibrarySheet.tsx",
  "../library/ModelsSheet.tsx",
  "../help/HelpSheet.tsx",
]);

function Nothing() {
  return null;
}

/** Around a part that stands in the middle of something: until it is there, nothing, and the rest stays where it is. */
export function Quietly({ children }: { children: ReactNode }) {
  return <Suspense fallback={null}>{children}</Suspense>;
}

function part<P>(path: string): ComponentType<P> | null {
  const load = found[path] as Loader<P> | undefined;
  return load ? lazy(load) : null;
}

// Begun at once beside the shell: the recipe is seen first of all.
const recipe = import("../plan/recipe/Recipe.tsx");
export const Recipe = lazy(() => recipe);

export const LookPage = part<object>("../look/LookPage.tsx") ?? Nothing;
export const LookStage = part<object>("../look/LookStage.tsx") ?? Nothing;
export const BenchPage = part<object>("../bench/BenchPage.tsx") ?? Nothing;
export const Profile = part<object>("../plan/profile/Profile.tsx") ?? Nothing;
export const Skin = part<object>("../plan/skin/Skin.tsx") ?? Nothing;
export interface MendsProps {
  readonly finding: Finding;
}
/** Mends of one finding, as buttons that say their effect. */
export const Mends = part<MendsProps>("../plan/mends/Mends.tsx") ?? Nothing;
export interface SuggestProps {
  readonly tier: Tier;
}
/** The way to the counts and angles that work for one tier. */
export const Suggest = part<SuggestProps>("../plan/suggest/Suggest.tsx") ?? Nothing;
/** The piece after each facet, to leaf through. */
export const Diary = part<object>("../plan/diary/Diary.tsx") ?? Nothing;

export const SHEETS: Readonly<Record<SheetName, ComponentType<SheetBodyProps> | null>> = {
  plans: part("../library/LibrarySheet.tsx"),
  models: part("../library/ModelsSheet.tsx"),
  help: part("../help/HelpSheet.tsx"),
  card: part("../plan/card/FacetCard.tsx"),
  examples: lazy(() => import("../settings/ExamplesSheet.tsx")),
  piece: lazy(() => import("../settings/PieceSheet.tsx")),
  settings: lazy(() => import("../settings/SettingsSheet.tsx")),
  keys: lazy(() => import("../settings/KeysSheet.tsx")),
};
