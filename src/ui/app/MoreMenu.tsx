/** Everything that is not one of the three places: sheets and files. */
import { Actions } from "../controls/Actions.tsx";
import { planWords } from "../messages/plan.ts";
import { shellWords } from "../messages/shell.ts";
import { useWords } from "../messages/words.tsx";
import { beginFresh, choosePlanFile, savePlanFile } from "../shared/files.ts";
import { openSheet, type SheetName } from "../shared/screen.ts";
import { hasKeys, keysFor, type Shortcut } from "../shared/shortcuts.ts";
import { useStudioStore } from "../studio.ts";

export function MoreMenu() {
  const studio = useStudioStore();
  const words = useWords(shellWords);
  const { fresh } = useWords(planWords);
  const keys = (name: Shortcut) => (hasKeys() ? keysFor(name, words.heldKeys) : undefined);
  const sheet = (id: SheetName, label: string) => ({ id, words: label, run: () => openSheet(studio, id) });
  const sheets = [
    sheet("piece", words.menu.piece),
    { id: "ideas", words: words.menu.ideas, run: () => studio.getState().go("ideas") },
    sheet("plans", words.menu.plans),
    sheet("examples", words.menu.examples),
    sheet("models", words.menu.exportModel),
    sheet("customer", words.menu.customer),
    sheet("film", words.menu.film),
    sheet("variants", words.menu.variants),
    sheet("settings", words.menu.settings),
    sheet("keys", words.menu.keys),
    sheet("help", words.menu.help),
  ];
  return (
    <Actions
      label={words.more}
      actions={[
        { id: "fresh", words: words.menu.fresh, run: () => beginFresh(studio, fresh) },
        { id: "open", words: words.menu.open, keys: keys("open"), run: () => choosePlanFile(studio) },
        { id: "save", words: words.menu.save, keys: keys("save"), run: () => savePlanFile(studio) },
        ...sheets,
      ]}
    />
  );
}
