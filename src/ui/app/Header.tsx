/** The line at the top: whose bench this is, what was done last, everything else. */
import { shellWords } from "../messages/shell.ts";
import { useWords } from "../messages/words.tsx";
import { KeptLine } from "./KeptLine.tsx";
import { MoreMenu } from "./MoreMenu.tsx";
import { UndoRedo } from "./UndoRedo.tsx";

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
        <MoreMenu />
      </div>
    </header>
  );
}
