/** A sheet of variants to choose from: up to twelve plans, versions, glasses, finishes or lights in one picture, each with its name. */
import { useEffect, useState } from "react";
import { Button } from "../controls/Button.tsx";
import { Pick } from "../controls/Pick.tsx";
import { tracedPicture, useTracing } from "../look/traced.ts";
import { type Job, useJob } from "../look/use-job.ts";
import { filmWords } from "../messages/film.ts";
import { useWords } from "../messages/words.tsx";
import { useViewport } from "../piece/viewport.ts";
import { fileNameOf } from "../shared/files.ts";
import { intoView } from "../shared/into-view.ts";
import { useStudioStore } from "../studio.ts";
import { useFormat } from "../use-format.ts";
import { usePlan } from "../use-studio.ts";
import { drawVariants, MOST_VARIANTS } from "./draw-variants.ts";
import { KeepRow } from "./KeepRow.tsx";
import { useVariants } from "./use-variants.ts";
import { VariantChoices } from "./VariantChoices.tsx";
import "./film.css";

const SIZES = { card: 640, software: 160 } as const;
const SAMPLES = { draft: 16, good: 128, best: 512 } as const;
type Fineness = keyof typeof SAMPLES;
const FINENESSES = Object.keys(SAMPLES) as Fineness[];

/** A picture as its own address, for as long as it is shown. */
function usePicture() {
  const [picture, setPicture] = useState<{ readonly file: Blob; readonly url: string } | null>(null);
  const url = picture?.url;
  useEffect(() => () => (url === undefined ? undefined : URL.revokeObjectURL(url)), [url]);
  return [
    picture,
    (file: Blob | null) => setPicture(file && { file, url: URL.createObjectURL(file) }),
  ] as const;
}

/** The names below the pictures, each of which can be another, or go. */
function VariantNames({ list, rename, remove, removeAll }: Omit<ReturnType<typeof useVariants>, "add">) {
  const words = useWords(filmWords).variants;
  const { number } = useFormat();
  return (
    <>
      <ol className="film-list">
        {list.map(({ key, name }, i) => (
          <li key={key}>
            <input
              type="text"
              aria-label={words.nameOf(number(i + 1, 0))}
              value={name}
              maxLength={80}
              onChange={(event) => rename(key, event.currentTarget.value)}
            />
            <Button onPress={() => remove(key)}>
              {words.remove}
              <span className="unseen"> {name}</span>
            </Button>
          </li>
        ))}
      </ol>
      {list.length > 1 ? <Button onPress={removeAll}>{words.removeAll}</Button> : null}
    </>
  );
}

/** How many pictures of the sheet are made. */
function Progress({ job, of }: { job: Job; of: number }) {
  const words = useWords(filmWords);
  const { number } = useFormat();
  return (
    <p className="film-row" role="status">
      <span>{words.progress(number(Math.floor((job.share ?? 0) * of), 0), number(of, 0))}</span>
      <Button onPress={job.stop}>{words.stop}</Button>
    </p>
  );
}

export default function VariantsSheet() {
  const studio = useStudioStore();
  const { eye } = useViewport();
  const film = useWords(filmWords);
  const words = film.variants;
  const { number } = useFormat();
  const plan = usePlan();
  const job = useJob();
  const state = useTracing();
  const { list, add, ...names } = useVariants();
  const [fineness, setFineness] = useState<Fineness>("draft");
  const [picture, setPicture] = usePicture();
  const [trouble, setTrouble] = useState<string | null>(null);
  const canTrace = state?.check.pass ?? false;
  const isFull = list.length >= MOST_VARIANTS;
  useEffect(() => {
    tracedPicture(studio);
  }, [studio]);
  const make = () =>
    job.start(async (signal, onShare) => {
      setPicture(null);
      const size = SIZES[state?.check.code === "software" ? "software" : "card"];
      setPicture(
        await drawVariants(studio, list, eye.getState().view, size, SAMPLES[fineness], signal, onShare),
      );
    });
  const file = fileNameOf({ ...plan, name: `${plan.name} ${words.ending}` }).replace(
    /\.glintwright\.json$/,
    ".png",
  );

  return (
    <section className="film">
      <div className="film-fields">
        <p className="soft">{words.intro(number(MOST_VARIANTS, 0))}</p>
        <VariantChoices isFull={isFull} onAdd={add} onTrouble={setTrouble} />
        {isFull ? <p className="soft">{words.full(number(MOST_VARIANTS, 0))}</p> : null}
        {trouble ? <p role="alert">{trouble}</p> : null}
        <VariantNames list={list} {...names} />
        <Pick
          label={film.fine}
          value={fineness}
          options={FINENESSES.map((id) => ({ id, words: film.finenesses[id] }))}
          onChange={setFineness}
        />
        {state && !canTrace ? <p role="alert">{words.cannot}</p> : null}
        {job.share === null ? (
          <Button look="outlined" isDisabled={!canTrace || list.length === 0} onPress={make}>
            {words.make}
          </Button>
        ) : (
          <Progress job={job} of={list.length} />
        )}
        {job.trouble ? <p role="alert">{words.failed(job.trouble)}</p> : null}
        {picture ? <KeepRow name={file} file={picture.file} save={words.save} /> : null}
      </div>
      {picture ? (
        <img
          onLoad={(event) => intoView(event.currentTarget)}
          className="film-picture"
          src={picture.url}
          alt={words.picture}
        />
      ) : null}
    </section>
  );
}
