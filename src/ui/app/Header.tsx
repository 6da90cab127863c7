/** The line at the top: whose bench this is, what was done last, everything else. */
import { lazy, Suspense } from "react";
import { shellWords } from "../messages/shell.ts";
import { useWords } from "../messages/words.tsx";
import { KeptLine } from "./KeptLine.tsx";
import { UndoRedo } from "./UndoRedo.tsx";

// Begun at once beside the shell, so that it is there when the hand is.
const menu = import("./MoreMenu.tsx");
const MoreMenu = lazy(() => menu);

export function Header() {
  const words = useWords(shellWords);
  return (
    <header className="head">
      <div className="head-left">
        <p className="head-name">{words.product}</p>
        <KeptLine />
      </div>
      <div className="head-right">
        <UndoRedo />
        <Suspense fallback={<span className="press press-plain">{words.more}</span>}>
          <MoreMenu />
        </Suspense>
      </div>
    </header>
  );
}
