/** The sheet that lies over the bench, when one does. */
import { Suspense } from "react";
import { Sheet } from "../controls/Sheet.tsx";
import { shellWords } from "../messages/shell.ts";
import { useWords } from "../messages/words.tsx";
import { Crashed } from "./Crashed.tsx";
import { CrashGuard } from "./CrashGuard.tsx";
import { SHEETS } from "./slots.tsx";
import { openSheet, type SheetName, useView } from "./view.ts";

const TITLES = {
  plans: "plans",
  examples: "examples",
  piece: "piece",
  settings: "settings",
  keys: "keys",
  help: "help",
  models: "exportModel",
  customer: "customer",
  film: "film",
  variants: "variants",
  card: "card",
} as const satisfies Record<SheetName, string>;
const WIDE: readonly SheetName[] = ["plans", "help", "examples", "film", "variants"];

export default function SheetHost() {
  const name = useView((state) => state.sheet);
  const words = useWords(shellWords);
  if (!name) return null;
  const Body = SHEETS[name];
  const close = () => openSheet(null);
  return (
    <Sheet title={words.menu[TITLES[name]]} onClose={close} wide={WIDE.includes(name)}>
      <CrashGuard instead={(again) => <Crashed again={again} />}>
        <Suspense fallback={<p className="waiting">{words.loadingPlace}</p>}>
          <Body onClose={close} />
        </Suspense>
      </CrashGuard>
    </Sheet>
  );
}
