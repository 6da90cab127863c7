/** On paper: the sheet as it will be printed, printed from here or kept as a file that needs nothing else. */
import { useMemo } from "react";
import { decimalSign } from "../../../words/format.ts";
import type { SheetQuestion } from "../../../worker/bench-worker.ts";
import { Button } from "../../controls/Button.tsx";
import { benchWords } from "../../messages/bench.ts";
import { useLanguage, useWords } from "../../messages/words.tsx";
import { fileNameOf, offerFile } from "../../shared/files.ts";
import { SendButton } from "../../shared/SendButton.tsx";
import { useFormat } from "../../use-format.ts";
import { usePlan } from "../../use-studio.ts";
import { benchPool } from "../bench-worker-client.ts";
import { useAsked } from "../use-asked.ts";
import { PaperPick, usePaper } from "./PaperPick.tsx";
import { SheetPreview } from "./SheetPreview.tsx";

const askSheet = (question: SheetQuestion): Promise<string> => benchPool.run("sheet", question);

export function PaperPart() {
  const { paper: words, counting, noTiers } = useWords(benchWords);
  const plan = usePlan();
  const language = useLanguage();
  const { unit, locale } = useFormat();
  const [paper, setPaper] = usePaper();
  const question = useMemo(
    (): SheetQuestion => ({
      plan,
      language,
      unit: unit === "mm" ? "mm" : "inch",
      paper,
      decimal: decimalSign(locale),
    }),
    [plan, language, unit, paper, locale],
  );
  const sheet = useAsked(question, askSheet);
  const isReady = sheet.answer !== null && !sheet.isWaiting;
  const fileName = fileNameOf(plan).replace(/\.glintwright\.json$/, ".html");
  const file = useMemo(
    () => (sheet.answer === null ? null : new Blob([sheet.answer], { type: "text/html" })),
    [sheet.answer],
  );
  if (plan.tiers.length === 0) return <p className="bench-empty">{noTiers}</p>;
  return (
    <div className="bench-flow">
      <p className="bench-sentence">{words.what}</p>
      <div className="bench-row">
        <PaperPick paper={paper} onChange={setPaper} />
        <Button look="strong" isDisabled={!isReady} onPress={() => window.print()}>
          {words.print}
        </Button>
        <Button look="outlined" isDisabled={!isReady} onPress={() => file && offerFile(fileName, file)}>
          {words.save}
        </Button>
        {isReady && file ? <SendButton name={fileName} file={file} /> : null}
      </div>
      <p className="soft">{words.trueSize}</p>
      {sheet.error ? <p role="alert">{words.failed}</p> : null}
      {sheet.answer === null ? <p className="waiting">{counting}</p> : <SheetPreview sheet={sheet.answer} />}
    </div>
  );
}
