/** One line at the foot of the page for what just happened: a file that can't be opened, a rule that became a depth. */
import { lazy, useEffect } from "react";
import type { Note } from "../../state/commands.ts";
import { nameOfTier, tierName } from "../../words/names.ts";
import { Button } from "../controls/Button.tsx";
import { historyWords } from "../messages/history.ts";
import { shellWords } from "../messages/shell.ts";
import { useLanguage, useWords } from "../messages/words.tsx";
import { tell, useScreen } from "../shared/screen.ts";
import { Quietly } from "../shared/slots.tsx";
import { useStudioStore } from "../studio.ts";
import { useFormat } from "../use-format.ts";
import { usePlan, useStudio } from "../use-studio.ts";

/** Why an edit was refused. */
const RefusedLine = lazy(() => import("./RefusedLine.tsx"));

/** Long enough to read two lines aloud. What stands against something stays until it is closed. */
const SAID_MS = 8000;

type RefusedNote = Extract<Note, { readonly key: "refused" }>;

/** What of a note is said at once. */
function useNoteWords(): (note: Exclude<Note, RefusedNote>) => string {
  const words = useWords(historyWords);
  const format = useFormat();
  const language = useLanguage();
  const plan = usePlan();
  return (note) => {
    if (note.key === "reference-became-depth")
      return words.noteReference(
        tierName(plan, note.tierId, language),
        nameOfTier(note.named, note.namedAt, language),
        format.length(note.mm, 2),
      );
    if (note.key === "measurements-dropped")
      return words.noteMeasured(tierName(plan, note.tierId, language), note.facets);
    return words.noteHistory;
  };
}

export function NoticeLine() {
  const studio = useStudioStore();
  const words = useWords(shellWords);
  const noteWords = useNoteWords();
  const notice = useScreen((state) => state.notice);
  const notes = useStudio((state) => state.notes);
  const dismissNotes = useStudio((state) => state.dismissNotes);

  useEffect(() => {
    if (notice?.tone !== "said") return;
    const timer = setTimeout(() => tell(studio, null), SAID_MS);
    return () => clearTimeout(timer);
  }, [notice, studio]);

  const close = () => {
    tell(studio, null);
    dismissNotes();
  };
  const shown = notice !== null || notes.length > 0;
  return (
    <div
      className="notice"
      role={notice?.tone === "stop" ? "alert" : "status"}
      data-shown={shown || undefined}
    >
      {shown ? (
        <>
          <div className="notice-text">
            {notice ? (
              <p className={notice.tone === "stop" ? "notice-stop" : undefined}>{notice.text}</p>
            ) : null}
            {notice?.details?.map((line) => (
              <p key={line} className="small">
                {line}
              </p>
            ))}
            {notes.map((note) =>
              note.key === "refused" ? (
                <Quietly key={JSON.stringify(note.fault)}>
                  <RefusedLine fault={note.fault} />
                </Quietly>
              ) : (
                <p key={noteWords(note)}>{noteWords(note)}</p>
              ),
            )}
          </div>
          <span className="notice-ways">
            {notice?.way ? <Button onPress={notice.way.run}>{notice.way.words}</Button> : null}
            <Button onPress={close}>{words.close}</Button>
          </span>
        </>
      ) : null}
    </div>
  );
}
