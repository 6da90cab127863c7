/** The table of sheets: a sheet is added by its name in `shared/screen.ts`, its title among the words of the menu and a line here. */
import { type ComponentType, lazy } from "react";
import type { shellWords } from "../messages/shell.ts";
import type { SheetName } from "../shared/screen.ts";
import type { SheetBodyProps } from "../shared/slots.tsx";

interface SheetRecord {
  readonly Body: ComponentType<SheetBodyProps>;
  /** Among the words of the menu. */
  readonly title: keyof (typeof shellWords)["en"]["menu"];
  /** For what wants the width of the page: lists with pictures, text beside drawings. */
  readonly isWide?: boolean;
}

export const SHEETS: Readonly<Record<SheetName, SheetRecord>> = {
  plans: { title: "plans", isWide: true, Body: lazy(() => import("../library/LibrarySheet.tsx")) },
  examples: { title: "examples", isWide: true, Body: lazy(() => import("../settings/ExamplesSheet.tsx")) },
  piece: { title: "piece", Body: lazy(() => import("../settings/PieceSheet.tsx")) },
  settings: { title: "settings", Body: lazy(() => import("../settings/SettingsSheet.tsx")) },
  keys: { title: "keys", Body: lazy(() => import("../settings/KeysSheet.tsx")) },
  help: { title: "help", isWide: true, Body: lazy(() => import("../help/HelpSheet.tsx")) },
  models: { title: "exportModel", Body: lazy(() => import("../library/ModelsSheet.tsx")) },
  customer: { title: "customer", Body: lazy(() => import("../customer/CustomerSheet.tsx")) },
  film: { title: "film", isWide: true, Body: lazy(() => import("../film/FilmSheet.tsx")) },
  variants: { title: "variants", isWide: true, Body: lazy(() => import("../film/VariantsSheet.tsx")) },
  card: { title: "card", Body: lazy(() => import("../plan/card/FacetCard.tsx")) },
};
