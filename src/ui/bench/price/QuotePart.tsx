/** The quote: one page for the customer, shown as it will be printed. */
import { useEffect, useMemo, useState } from "react";
import type { Priced } from "../../../core/offer/offer.ts";
import type { Plan } from "../../../core/plan/document.ts";
import { RANGES, TEXT } from "../../../core/plan/limits.ts";
import { DEFAULT_OPTIONS, packScene, STILL_MEETINGS } from "../../../render/pack-scene.ts";
import { USUAL_VALID_DAYS } from "../../../sheet/quote.ts";
import type { Paper } from "../../../sheet/sheet-style.ts";
import { samePiece } from "../../../state/derived.ts";
import { offerWordsDe } from "../../../words/de/offer.ts";
import { offerWordsEn } from "../../../words/en/offer.ts";
import { quotedRows } from "../../../words/offer.ts";
import type { QuoteQuestion } from "../../../worker/bench-worker.ts";
import { Button } from "../../controls/Button.tsx";
import { Toggle } from "../../controls/Toggle.tsx";
import { sceneOf } from "../../look/look-scene.ts";
import { lookOf } from "../../look/look-settings.ts";
import { pngOf } from "../../look/png.ts";
import { stillPicture, tracedPicture, useTracing, viewOf } from "../../look/traced.ts";
import { useJob } from "../../look/use-job.ts";
import { benchWords } from "../../messages/bench.ts";
import { lookWords } from "../../messages/look.ts";
import { priceWords } from "../../messages/price.ts";
import { useLanguage, useWords } from "../../messages/words.tsx";
import { useViewport } from "../../piece/viewport.ts";
import { fileNameOf, offerFile } from "../../shared/files.ts";
import { SendButton } from "../../shared/SendButton.tsx";
import { useStudioStore } from "../../studio.ts";
import { useFormat } from "../../use-format.ts";
import { useGlassName } from "../../use-glass-name.ts";
import { usePlan } from "../../use-studio.ts";
import { benchPool } from "../bench-worker-client.ts";
import { MaybeField } from "../parts/MaybeField.tsx";
import { PaperPick, usePaper } from "../sheet/PaperPick.tsx";
import { SheetPreview } from "../sheet/SheetPreview.tsx";
import { useAsked } from "../use-asked.ts";
import { useChangeOffer } from "./OfferFields.tsx";

const OFFER_WORDS = { en: offerWordsEn, de: offerWordsDe } as const;
/** 84 mm at 200 dots an inch; at 100 where the processor traces. */
const PICTURE = { card: { side: 660, samples: 128 }, software: { side: 330, samples: 16 } } as const;

const askQuote = (question: QuoteQuestion): Promise<string> => benchPool.run("quote", question);

const addressOf = (blob: Blob): Promise<string> =>
  new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result));
    reader.onerror = () => reject(reader.error);
    reader.readAsDataURL(blob);
  });

function TermsField() {
  const words = useWords(priceWords);
  const { offer } = usePlan();
  const change = useChangeOffer();
  const [draft, setDraft] = useState<string | null>(null);
  const commit = () => {
    const terms = draft?.trim();
    setDraft(null);
    if (terms !== undefined && terms !== (offer?.terms ?? "")) change({ terms: terms || undefined });
  };
  return (
    <p className="price-terms">
      <label className="field-label" htmlFor="quote-terms">
        {words.terms}
      </label>
      <textarea
        id="quote-terms"
        rows={3}
        maxLength={TEXT.terms}
        value={draft ?? offer?.terms ?? ""}
        aria-describedby="quote-terms-hint"
        onChange={(event) => setDraft(event.currentTarget.value)}
        onBlur={commit}
      />
      <span className="field-hint" id="quote-terms-hint">
        {words.termsHow}
      </span>
    </p>
  );
}

/** What the quote is for: the piece as it is planned, whatever Look may try on it. */
const AS_PLANNED = { finish: "planned", glass: "planned", showInside: true, isWet: false } as const;

/** The piece's picture in Look's light, from where one looks there; belongs to the piece that it was traced of. */
function useQuotePicture() {
  const studio = useStudioStore();
  const { eye } = useViewport();
  const plan = samePiece(usePlan());
  const job = useJob();
  const [traced, setTraced] = useState<{ readonly of: Plan; readonly address: string } | null>(null);
  const state = useTracing();
  useEffect(() => {
    tracedPicture(studio);
  }, [studio]);
  const trace = () =>
    job.start(async (signal, onProgress) => {
      const settings = { ...lookOf(studio).getState(), ...AS_PLANNED };
      const packed = packScene(sceneOf(plan, settings), {
        ...DEFAULT_OPTIONS,
        hasDispersion: settings.hasDispersion,
        maxMeetings: STILL_MEETINGS,
      });
      const { side, samples } = PICTURE[state?.check.code === "software" ? "software" : "card"];
      const options = { width: side, height: side, samples, exposure: settings.exposure, signal, onProgress };
      const picture = await stillPicture(studio, packed, viewOf(eye.getState().view, 1), options);
      setTraced({ of: plan, address: await addressOf(await pngOf(picture, true, null)) });
    });
  const picture = traced?.of === plan ? traced.address : null;
  return { job, trace, picture, canTrace: state?.check.pass ?? false, isReady: state !== null };
}

interface QuoteProps {
  readonly priced: Priced | null;
  /** What it takes is still being worked out. */
  readonly isCounting: boolean;
}

export function QuotePart({ priced, isCounting }: QuoteProps) {
  const words = useWords(priceWords);
  const bench = useWords(benchWords);
  const { cancel } = useWords(lookWords).save;
  const language = useLanguage();
  const { number, locale } = useFormat();
  const plan = usePlan();
  const glass = useGlassName();
  const change = useChangeOffer();
  const { job, trace, picture, canTrace } = useQuotePicture();
  const [paper, setPaper] = usePaper();
  const [hasRows, setRows] = useState(false);
  const [today] = useState(() => Date.now());
  const { name, piece, maker, offer } = plan;
  const price = priced?.price ?? null;
  const question = useMemo((): QuoteQuestion | null => {
    if (!offer || !priced || price === null) return null;
    const rows = hasRows
      ? quotedRows({ piece, offer }, { ...priced, price }, OFFER_WORDS[language], locale)
      : [];
    const who = { name, piece, glass, maker, offer };
    return { ...who, price, rows, picture, today, locale, language, paper: paper satisfies Paper };
  }, [name, piece, glass, maker, offer, priced, price, hasRows, picture, today, locale, language, paper]);
  const quote = useAsked(question, askQuote);
  const html = question === null ? null : quote.answer;
  const fileName = fileNameOf({ ...plan, name: `${name} ${words.fileEnding}` }).replace(
    /\.glintwright\.json$/,
    ".html",
  );
  const file = useMemo(() => (html === null ? null : new Blob([html], { type: "text/html" })), [html]);
  return (
    <section className="price-quote" aria-labelledby="offer-quote">
      <h2 id="offer-quote">{words.quote}</h2>
      {isCounting ? (
        <p className="waiting">{bench.counting}</p>
      ) : (
        <p>{question === null ? words.noPrice : words.quoteWhat}</p>
      )}
      {question === null ? null : (
        <>
          <TermsField />
          <div className="bench-fields">
            <MaybeField
              kind="plain"
              label={words.validDays}
              unit={words.days}
              digits={0}
              range={RANGES.validDays}
              value={offer?.validDays ?? USUAL_VALID_DAYS}
              onChange={(validDays) => change({ validDays })}
            />
            <PaperPick paper={paper} onChange={setPaper} />
          </div>
          <Toggle isOn={hasRows} onChange={setRows}>
            {words.withRows}
          </Toggle>
          {maker?.name ? null : <p className="soft">{words.makerLeft}</p>}
          {job.share === null ? (
            <Button look="outlined" isDisabled={!canTrace} onPress={trace}>
              {words.withPicture}
            </Button>
          ) : (
            <p className="bench-row" role="status">
              {words.tracing(number(100 * job.share, 0))}
              <Button onPress={job.stop}>{cancel}</Button>
            </p>
          )}
          {canTrace ? null : <p className="soft">{words.cannotTrace}</p>}
          {job.trouble ? <p role="alert">{words.noPicture(job.trouble)}</p> : null}
          <div className="bench-row">
            <Button look="strong" isDisabled={html === null} onPress={() => window.print()}>
              {bench.paper.print}
            </Button>
            <Button
              look="outlined"
              isDisabled={file === null}
              onPress={() => file && offerFile(fileName, file)}
            >
              {bench.paper.save}
            </Button>
            {file === null ? null : <SendButton name={fileName} file={file} />}
          </div>
          {quote.error ? <p role="alert">{bench.paper.failed}</p> : null}
          {html === null ? <p className="waiting">{bench.counting}</p> : <SheetPreview sheet={html} />}
        </>
      )}
    </section>
  );
}
