/**
 * What other parts of the app put into the frame, each in its own chunk, loaded when its place is first entered.
 * Pictures of the piece (profile, skin) fill their box and size themselves by it. A place's page is the column or page beside
 * the piece; Look's stage is laid over the piece and draws the traced picture there. Sheets may take `onClose`.
 */
import { type ComponentType, lazy, type ReactNode, Suspense, useState } from "react";
import type { SheetName } from "./view.ts";

export interface SheetBodyProps {
  readonly onClose: () => void;
}

/** Around a part that stands in the middle of something: until it is there, nothing, and the rest stays where it is. */
export function Quietly({ children }: { children: ReactNode }) {
  return <Suspense fallback={null}>{children}</Suspense>;
}

/** A part that the page opens on, asked for at once beside the shell. */
interface OpeningPart {
  here: ComponentType | null;
  readonly later: ComponentType;
}

const asked: Promise<unknown>[] = [];

function ask(module: Promise<{ default: ComponentType }>): OpeningPart {
  const part: OpeningPart = { here: null, later: lazy(() => module) };
  asked.push(
    module.then((loaded) => {
      part.here = loaded.default;
    }),
  );
  return part;
}

/** A part that is here is simply drawn: a lazy one would leave its place empty for one more turn, however early it came. */
function Opened({ part }: { part: OpeningPart }) {
  const [Drawn] = useState<ComponentType>(() => part.here ?? part.later);
  return <Drawn />;
}

const recipe = ask(import("../plan/recipe/Recipe.tsx"));
const profile = ask(import("../plan/profile/Profile.tsx"));
const skin = ask(import("../plan/skin/Skin.tsx"));
export const Recipe = () => <Opened part={recipe} />;
export const Profile = () => <Opened part={profile} />;
export const Skin = () => <Opened part={skin} />;
/** Settled once what the page opens on is here, or can't be had: its own place in the frame says so then. */
export const openingParts: Promise<unknown> = Promise.allSettled(asked);

export const LookPage = lazy(() => import("../look/LookPage.tsx"));
export const LookStage = lazy(() => import("../look/LookStage.tsx"));
export const BenchPage = lazy(() => import("../bench/BenchPage.tsx"));
/** Mends of one finding, as buttons that say their effect. */
export const Mends = lazy(() => import("../plan/mends/Mends.tsx"));
/** The way to the counts and angles that work for one tier. */
export const Suggest = lazy(() => import("../plan/suggest/Suggest.tsx"));
/** The piece after each facet, to leaf through. */
export const Diary = lazy(() => import("../plan/diary/Diary.tsx"));

export const SHEETS: Readonly<Record<SheetName, ComponentType<SheetBodyProps>>> = {
  plans: lazy(() => import("../library/LibrarySheet.tsx")),
  models: lazy(() => import("../library/ModelsSheet.tsx")),
  help: lazy(() => import("../help/HelpSheet.tsx")),
  card: lazy(() => import("../plan/card/FacetCard.tsx")),
  examples: lazy(() => import("../settings/ExamplesSheet.tsx")),
  piece: lazy(() => import("../settings/PieceSheet.tsx")),
  settings: lazy(() => import("../settings/SettingsSheet.tsx")),
  keys: lazy(() => import("../settings/KeysSheet.tsx")),
};
