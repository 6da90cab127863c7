import type { Label } from "../../state/labels.ts";
import { history as en } from "../../words/en/history.ts";
import type { Language, Translated } from "../../words/language.ts";
import { openingWords } from "./german.ts";

export const historyWords = openingWords(en, (german) => german.history);

type HistoryWords = Translated<typeof en>;

/** The word for a field, when it has one. */
const wordFor = (words: Readonly<Record<string, string>>, field: string | undefined): string | null =>
  field !== undefined && Object.hasOwn(words, field) ? words[field]! : null;

/** What an undo step is called, in the words of one language. */
export function labelInWords(label: Label, words: HistoryWords, language: Language): string {
  const { about } = words;
  switch (label.about) {
    case "tier": {
      const field = wordFor(words.tierFields, label.field);
      return field === null ? about.tier(label.tier) : about.tierField(field, label.tier);
    }
    case "piece":
      return wordFor(words.pieceFields, label.field) ?? about.piece;
    case "rig":
      return wordFor(words.rigFields, label.field) ?? about.rig;
    case "add-tier":
    case "remove-tier":
    case "duplicate-tier":
    case "move-tier":
      return about[label.about](label.tier);
    case "mend":
      return label.said?.[language] ?? wordFor(about.mends, label.code) ?? about.severalTiers;
    case "field":
      return wordFor(words.partFields, label.path.split(".")[0]) ?? about.field;
    default:
      return about[label.about];
  }
}
