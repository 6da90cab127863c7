/** A wish file as the command line takes it, brought to the wall. */
import { parseWish } from "../../core/ideas/wish-file.ts";
import { ideasWords } from "../messages/ideas.ts";
import { openSheet, tell } from "../shared/screen.ts";
import { languageNow, type Studio } from "../studio.ts";
import { draftOf } from "./draft.ts";

/** @throws PlanFileError for what is no wish; nothing has changed then */
export function openWish(studio: Studio, name: string, text: string): void {
  const { wish, unknown } = parseWish(text);
  const { given } = ideasWords[languageNow(studio)].wish;
  draftOf(studio).setState({ given: { name, wish } });
  openSheet(studio, null);
  studio.getState().go("ideas");
  tell(studio, {
    tone: "said",
    text: given.opened(name),
    details: unknown.length > 0 ? [given.unknown(unknown.join(", "))] : [],
  });
}
