/** Every key that does something, by where it does it. */

import { settingsWords } from "../messages/settings.ts";
import { shellWords } from "../messages/shell.ts";
import { useWords } from "../messages/words.tsx";
import { keysFor, type Shortcut } from "../shared/shortcuts.ts";
import "./settings.css";

type Row = readonly [keys: string, does: string];

function KeyTable({ title, rows }: { title: string; rows: readonly Row[] }) {
  return (
    <section className="keys">
      <h2>{title}</h2>
      <dl>
        {rows.map(([keys, does]) => (
          <div key={does}>
            <dt>
              <kbd>{keys}</kbd>
            </dt>
            <dd>{does}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

export default function KeysSheet() {
  const { keys: words } = useWords(settingsWords);
  const { heldKeys } = useWords(shellWords);
  const keys = (name: Shortcut) => keysFor(name, heldKeys);
  return (
    <>
      <KeyTable
        title={words.everywhere}
        rows={[
          [keys("undo"), words.undo],
          [keys("redo"), words.redo],
          [keys("open"), words.open],
          [keys("save"), words.save],
          [[keys("plan"), keys("look"), keys("bench"), keys("ideas")].join(" "), words.places],
          [keys("keys"), words.list],
        ]}
      />
      <KeyTable
        title={words.piece}
        rows={[
          [words.arrows, words.turn],
          [`${words.shift} + ${words.arrows}`, words.turnFine],
          ["+ −", words.nearer],
          ["F S B", words.looks],
          [words.home_, words.home],
          [words.pages, words.facets],
          [words.escape, words.leave],
        ]}
      />
      <KeyTable
        title={words.fields}
        rows={[
          ["↑ ↓", words.step],
          [`${words.shift} + ↑ ↓`, words.coarse],
          [`${words.alt} + ↑ ↓`, words.fine],
          [words.enter, words.set],
          [words.escape, words.back],
        ]}
      />
      <KeyTable
        title={words.dragging}
        rows={[
          [words.alt, words.free],
          [words.shift, words.finely],
          [`${words.escape} `, words.cancel],
        ]}
      />
    </>
  );
}
