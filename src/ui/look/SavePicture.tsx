/** A picture for a customer: traced at a chosen size and quality, saved as PNG. */
import { useState } from "react";
import { parseNumber } from "../../words/format.ts";
import { glassInWords } from "../../words/glasses.ts";
import { Button } from "../controls/Button.tsx";
import { Choice } from "../controls/Choice.tsx";
import { NumberField } from "../controls/NumberField.tsx";
import { Pick } from "../controls/Pick.tsx";
import { Toggle } from "../controls/Toggle.tsx";
import { lookWords } from "../messages/look.ts";
import { planWords } from "../messages/plan.ts";
import { useLanguage, useWords } from "../messages/words.tsx";
import { usePalette } from "../piece/use-palette.ts";
import { useViewport } from "../piece/viewport.ts";
import { useSettledPlan } from "../settled.ts";
import { fileNameOf, offerFile } from "../shared/files.ts";
import { SendButton } from "../shared/SendButton.tsx";
import { useOutlasting } from "../shared/use-outlasting.ts";
import { useStudioStore } from "../studio.ts";
import { useFormat } from "../use-format.ts";
import { CROPS, type Crop, sizeOf } from "./crops.ts";
import { useLook } from "./look-settings.ts";
import { pngOf } from "./png.ts";
import { type Asked, type Quality, SAMPLES, type Side, traceAsked } from "./saved-picture.ts";
import { makeTimeLeft } from "./time-left.ts";
import { tracedPicture, useTracing } from "./traced.ts";
import { useJob } from "./use-job.ts";
import { variantName } from "./variant-name.ts";

const QUALITIES: readonly Quality[] = ["draft", "good", "best"];
const LEAST_SIZE = 128;
const MOST_SIZE = 4096;

/** What is chosen of a picture; it outlasts a reload, as whoever makes several wants them alike. */
interface Chosen {
  readonly size: number;
  readonly quality: Quality;
  readonly crop: Crop;
}
const BEGUN: Chosen = { size: 1600, quality: "good", crop: "screen" };

function readChosen(data: unknown): Chosen | null {
  const { size, quality, crop } = (data ?? {}) as Partial<Chosen>;
  const isSize = Number.isInteger(size) && Number(size) >= LEAST_SIZE && Number(size) <= MOST_SIZE;
  const isWhole = isSize && QUALITIES.some((one) => one === quality) && CROPS.some((one) => one === crop);
  return isWhole ? ({ size, quality, crop } as Chosen) : null;
}

interface Saved {
  readonly name: string;
  readonly file: Blob;
}

/** Roughly: seconds up to two minutes, then minutes. */
function timeInWords(
  ms: number,
  words: { readonly seconds: (n: string) => string; readonly minutes: (n: string) => string },
  number: (value: number, digits: number) => string,
): string {
  const seconds = Math.max(1, ms / 1000);
  if (seconds >= 120) return words.minutes(number(seconds / 60, 0));
  return words.seconds(number(seconds < 10 ? seconds : 10 * Math.round(seconds / 10), 0));
}

/** How large it is, for where it is cut, how finely it is traced. */
function PictureFields({
  chosen: { size, quality, crop },
  onChange,
}: {
  chosen: Chosen;
  onChange: (change: Partial<Chosen>) => void;
}) {
  const words = useWords(lookWords).save;
  const format = useFormat();
  return (
    <>
      <NumberField
        label={words.size}
        value={size}
        unit={words.pixels}
        min={LEAST_SIZE}
        max={MOST_SIZE}
        step={100}
        format={(value) => format.number(value, 0)}
        parse={(text) => {
          const read = parseNumber(text);
          return read === null ? null : Math.round(read);
        }}
        onChange={(one) => onChange({ size: one })}
      />
      <Choice
        label={words.crop}
        value={crop}
        options={CROPS.map((id) => ({ id, words: words.crops[id] }))}
        onChange={(one) => onChange({ crop: one })}
      />
      <Pick
        label={words.fine}
        value={quality}
        options={QUALITIES.map((id) => ({ id, words: `${words[id]} (${words.samples(SAMPLES[id])})` }))}
        onChange={(one) => onChange({ quality: one })}
      />
    </>
  );
}

/** What is asked of one picture. */
interface ToSave extends Asked {
  readonly hasCaption: boolean;
}

/** Traces the picture that is asked for, as a job that can be stopped, and hands it over. */
function useSaving(asked: ToSave) {
  const studio = useStudioStore();
  const look = useWords(lookWords);
  const language = useLanguage();
  const { glasses } = useWords(planWords).piece;
  const format = useFormat();
  const plan = useSettledPlan();
  const { ground } = usePalette();
  const { eye } = useViewport();
  const job = useJob();
  const [saved, setSaved] = useState<Saved | null>(null);
  const [leftMs, setLeftMs] = useState<number | null>(null);
  const save = () =>
    job.start(async (signal, onProgress) => {
      setSaved(null);
      setLeftMs(null);
      const timeLeft = makeTimeLeft(() => performance.now());
      const onShare = (share: number) => {
        setLeftMs(timeLeft(share));
        onProgress(share);
      };
      const { r, g, b } = ground;
      const seen = eye.getState().view;
      const traced = await traceAsked(studio, plan, asked, seen, [r, g, b], signal, onShare);
      const { picture, shown, called, settings } = traced;
      const glass = settings.glass === "planned" ? shown.piece.glass : settings.glass;
      const caption = look.save.captionText(
        called,
        format.length(shown.piece.diameterMm),
        glassInWords(glass, glasses),
      );
      const name = variantName(called, settings, { look, glasses, language }, settings.picture?.name);
      const fileName = fileNameOf({ ...shown, name }).replace(/\.glintwright\.json$/, ".png");
      const file = await pngOf(picture, asked.isTransparent, asked.hasCaption ? caption : null);
      offerFile(fileName, file);
      setSaved({ name: fileName, file });
    });
  return { job, save, saved, leftMs };
}

/** The press that begins, how far it is, what came of it. */
function Saving({ asked, ms }: { asked: ToSave; ms: number | null }) {
  const words = useWords(lookWords).save;
  const format = useFormat();
  const { job, save, saved, leftMs } = useSaving(asked);
  return (
    <>
      {ms === null || job.share !== null ? null : (
        <p className="look-note">{words.takes(timeInWords(ms, words, format.number))}</p>
      )}
      {job.share === null ? (
        <Button look="strong" isDisabled={ms === null} onPress={save}>
          {words.save}
        </Button>
      ) : (
        <p className="look-row" role="status">
          {words.progress(Math.round(100 * job.share))}
          {leftMs === null ? null : <span>{words.left(timeInWords(leftMs, words, format.number))}</span>}
          <Button onPress={job.stop}>{words.cancel}</Button>
        </p>
      )}
      {saved ? (
        <>
          <p role="status">{words.saved(saved.name)}</p>
          <p className="look-row">
            <SendButton name={saved.name} file={saved.file} />
          </p>
        </>
      ) : null}
      {job.trouble ? (
        <p className="look-trouble" role="alert">
          {words.failed(job.trouble)}
        </p>
      ) : null}
    </>
  );
}

export function SavePicture() {
  const studio = useStudioStore();
  const look = useWords(lookWords);
  const words = look.save;
  const comparesTwo = useLook((settings) => settings.against === "other");
  const [side, setSide] = useState<Side>("left");
  const canTrace = useTracing()?.check.pass ?? false;
  const [chosen, setChosen] = useOutlasting("picture", BEGUN, readChosen);
  const { size, quality, crop } = chosen;
  const hasTable = useLook((settings) => settings.table !== "none");
  const [wantsPaper, setPaper] = useState(true);
  // What Look shows stays as it is; pictures for elsewhere lie on something.
  const laysDown = crop !== "screen" && !hasTable;
  const isLaidDown = laysDown && wantsPaper;
  const [isTransparent, setTransparent] = useState(false);
  const [hasCaption, setCaption] = useState(false);
  const across = sizeOf(crop, size);
  const pixels = across.width * across.height;
  return (
    <section className="look-part">
      <h2>{words.title}</h2>
      {comparesTwo ? (
        <Pick
          label={words.which}
          value={side}
          options={[
            { id: "left", words: look.compare.left },
            { id: "right", words: look.compare.right },
          ]}
          onChange={setSide}
        />
      ) : null}
      <PictureFields chosen={chosen} onChange={(change) => setChosen((now) => ({ ...now, ...change }))} />
      {laysDown ? (
        <Toggle isOn={wantsPaper} onChange={setPaper}>
          {words.onPaper}
        </Toggle>
      ) : null}
      <Toggle isOn={isTransparent} onChange={setTransparent}>
        {words.transparent}
      </Toggle>
      <Toggle isOn={hasCaption} onChange={setCaption}>
        {words.caption}
      </Toggle>
      <Saving
        asked={{ ...chosen, side, isLaidDown, isTransparent, hasCaption }}
        ms={
          canTrace
            ? tracedPicture(studio).renderer.stillMs(pixels, SAMPLES[quality], hasTable || isLaidDown)
            : null
        }
      />
    </section>
  );
}
