/** The sheet that lies over the bench, when one does. */
import { Suspense } from "react";
import { Sheet } from "../controls/Sheet.tsx";
import { shellWords } from "../messages/shell.ts";
import { useWords } from "../messages/words.tsx";
import { openSheet, useScreen } from "../shared/screen.ts";
import { useStudioStore } from "../studio.ts";
import { Crashed } from "./Crashed.tsx";
import { CrashGuard } from "./CrashGuard.tsx";
import { SHEETS } from "./sheet-bodies.ts";

export default function SheetHost() {
  const studio = useStudioStore();
  const name = useScreen((state) => state.sheet);
  const words = useWords(shellWords);
  if (!name) return null;
  const { Body, title, isWide } = SHEETS[name];
  const close = () => openSheet(studio, null);
  return (
    <Sheet title={words.menu[title]} onClose={close} wide={isWide ?? false}>
      <CrashGuard instead={(again) => <Crashed again={again} />}>
        <Suspense fallback={<p className="waiting">{words.loadingPlace}</p>}>
          <Body onClose={close} />
        </Suspense>
      </CrashGuard>
    </Sheet>
  );
}
