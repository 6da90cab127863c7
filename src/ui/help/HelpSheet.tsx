/** Help: the way round the bench again, and what every word means, with a drawing each. */

import { Button } from "../controls/Button.tsx";
import { helpWords } from "../messages/help.ts";
import { shellWords } from "../messages/shell.ts";
import { useWords } from "../messages/words.tsx";
import { useViewport } from "../piece/viewport.ts";
import { openSheet } from "../shared/screen.ts";
import type { SheetBodyProps } from "../shared/slots.tsx";
import { useStudioStore } from "../studio.ts";
import { beginGuide } from "./guide-state.ts";
import { TERMS, TermDrawing } from "./TermDrawing.tsx";

export default function HelpSheet({ onClose }: SheetBodyProps) {
  const studio = useStudioStore();
  const viewport = useViewport();
  const words = useWords(helpWords);
  const shell = useWords(shellWords);
  const again = () => {
    onClose();
    void beginGuide(viewport);
  };
  return (
    <>
      <p className="soft">{words.intro}</p>
      <p>
        <Button look="outlined" onPress={again}>
          {words.guide.again}
        </Button>{" "}
        <Button look="outlined" onPress={() => openSheet(studio, "keys")}>
          {shell.menu.keys}
        </Button>
      </p>
      <h2>{words.words}</h2>
      <ul className="terms">
        {TERMS.map((term) => (
          <li key={term} className="term">
            <TermDrawing term={term} />
            <div>
              <h3>{words.terms[term].name}</h3>
              <p>{words.terms[term].text}</p>
            </div>
          </li>
        ))}
      </ul>
    </>
  );
}
