/** A film of the piece: which loop, for where, how long and fine; its pictures as they are made; the film itself, to play and keep. */
import { useEffect, useMemo, useRef, useState } from "react";
import { LOOPS, type Loop } from "../../core/show/loops.ts";
import { solid } from "../../state/derived.ts";
import { Button } from "../controls/Button.tsx";
import { Pick } from "../controls/Pick.tsx";
import { tracedPicture, useTracing } from "../look/traced.ts";
import { useJob } from "../look/use-job.ts";
import { filmWords } from "../messages/film.ts";
import { useWords } from "../messages/words.tsx";
import { fileNameOf, offerFile } from "../shared/files.ts";
import { intoView } from "../shared/into-view.ts";
import { SendButton } from "../shared/SendButton.tsx";
import { useFormat } from "../use-format.ts";
import { usePlan } from "../use-studio.ts";
import {
  BEGUN,
  type Effort,
  FINENESSES,
  LENGTHS,
  lighter,
  partsLight,
  RATES,
  SHAPES,
  SIZES,
  samplesIn,
  shotOf,
} from "./effort.ts";
import { type FilmKind, filmKind } from "./encode.ts";
import { type Film, type FilmWish, makeFilm, probeFilm } from "./make-film.ts";
import { marked, msLeft, spanInWords } from "./pace.ts";
import "./film.css";

const BYTES_PER_MB = 1e6;

/** What was made, as long as this sheet is open; its address is let go with it. */
function useFilm() {
  const [film, setFilm] = useState<(Film & { readonly url: string; readonly seconds: number }) | null>(null);
  const url = film?.url;
  useEffect(() => () => (url === undefined ? undefined : URL.revokeObjectURL(url)), [url]);
  return [film, setFilm] as const;
}

/** Beyond that a lighter film is offered. */
const LONG_MS = 300_000;

/** Milliseconds a sample; null while that is being found out. It is asked anew where another film takes another time for each. */
function useSpeed(wish: FilmWish, isAsked: boolean, onTrouble: (why: string) => void): number | null {
  const plan = usePlan();
  const { loop, partsLight: parts, width, height } = wish;
  const key = `${loop} ${parts} ${width / height}`;
  const [found, setFound] = useState<{ key: string; plan: object; speed: number } | null>(null);
  const isKnown = found?.key === key && found.plan === plan;
  useEffect(() => {
    if (!isAsked || isKnown) return;
    const over = new AbortController();
    probeFilm(plan, wish, over.signal).then(
      (ms) => setFound({ key, plan, speed: ms / samplesIn({ rate: 1, ...wish }) }),
      (error: unknown) => {
        if (!over.signal.aborted) onTrouble(error instanceof Error ? error.message : String(error));
      },
    );
    return () => over.abort();
  }, [isAsked, isKnown, key, plan, wish, onTrouble]);
  return isKnown ? found.speed : null;
}

export default function FilmSheet() {
  const words = useWords(filmWords);
  const { number } = useFormat();
  const plan = usePlan();
  const job = useJob();
  const state = useTracing();
  const [loop, setLoop] = useState<Loop>("turn");
  const device = state?.check.code === "software" ? "software" : "card";
  const [chosen, setChosen] = useState<Partial<Effort>>({});
  const choose = (change: Partial<Effort>) => setChosen((now) => ({ ...now, ...change }));
  const effort: Effort = { ...BEGUN[device], ...chosen };
  const { shape, size, length, fineness, rate } = effort;
  const wish = useMemo(() => {
    const wished: Effort = { shape, size, length, fineness, rate };
    return { loop, ...shotOf(device, wished), partsLight: partsLight(device, wished) };
  }, [loop, device, shape, size, length, fineness, rate]);
  const { width, height } = wish;
  const [kind, setKind] = useState<FilmKind | null>(null);
  const [done, setDone] = useState({ pictures: 0, of: 1, left: "" });
  const [film, setFilm] = useFilm();
  const [trouble, setTrouble] = useState<string | null>(null);
  const last = useRef<HTMLCanvasElement>(null);
  const isVanished = solid(plan).vanished;
  const canTrace = state?.check.pass ?? false;
  const isWorking = job.share !== null;
  const speed = useSpeed(wish, canTrace && !isVanished && !isWorking, setTrouble);
  const span = (ms: number) => spanInWords(ms, words, number);
  const msOf = (other: Effort) => (speed ?? 0) * samplesIn(shotOf(device, other));
  const less = speed !== null && msOf(effort) > LONG_MS ? lighter(effort, msOf, LONG_MS) : null;
  const lessInWords = (other: Effort) => {
    const shot = shotOf(device, other);
    const said = [
      other.fineness === fineness ? "" : words.finenesses[other.fineness],
      other.rate === rate ? "" : words.aSecond(other.rate),
      other.size === size ? "" : words.pixels(number(shot.width, 0), number(shot.height, 0)),
      other.length === length ? "" : words.seconds(other.length),
    ];
    return said.filter((one) => one !== "").join(", ");
  };

  useEffect(() => {
    tracedPicture();
  }, []);
  useEffect(() => {
    let isHere = true;
    void filmKind({ width, height, rate: wish.rate }).then((found) => isHere && setKind(found));
    return () => {
      isHere = false;
    };
  }, [width, height, wish.rate]);

  const show = (picture: OffscreenCanvas) => {
    const canvas = last.current;
    if (!canvas) return;
    [canvas.width, canvas.height] = [picture.width, picture.height];
    canvas.getContext("2d")?.drawImage(picture, 0, 0);
  };
  const make = () =>
    job.start(async (signal, onShare) => {
      setFilm(null);
      setTrouble(null);
      const of = wish.seconds * wish.rate;
      // until pictures say how fast they are made, what was told before it began
      const told = speed === null ? null : msOf(effort);
      setDone({ pictures: 0, of, left: told === null ? "" : span(told) });
      let marks: ReturnType<typeof marked> = [];
      const made = await makeFilm(
        plan,
        wish,
        signal,
        (pictures, _of, picture) => {
          show(picture);
          if (pictures === 1) intoView(last.current);
          marks = marked(marks, pictures / of, performance.now());
          const ms = msLeft(marks) ?? (told === null ? null : told * (1 - pictures / of));
          setDone({ pictures, of, left: ms === null || pictures === of ? "" : span(ms) });
        },
        onShare,
      );
      setFilm({ ...made, url: URL.createObjectURL(made.file), seconds: wish.seconds });
    });
  const name = fileNameOf({ ...plan, name: `${plan.name} ${words.ending}` }).replace(
    /\.glintwright\.json$/,
    `.${film?.kind ?? kind ?? "mp4"}`,
  );

  return (
    <section className="film">
      <div className="film-fields">
        <p className="soft">{isVanished ? words.vanished : words.intro}</p>
        <Pick
          label={words.loop}
          value={loop}
          options={LOOPS.map((id) => ({ id, words: words.loops[id] }))}
          onChange={setLoop}
        />
        <Pick
          label={words.shape}
          value={shape}
          options={SHAPES.map((id) => ({ id, words: words.shapes[id] }))}
          onChange={(one) => choose({ shape: one })}
        />
        <Pick
          label={words.large}
          value={size}
          options={SIZES.map((id) => ({ id, words: words.sizes[id] }))}
          onChange={(one) => choose({ size: one })}
        />
        <p className="soft">{words.size(number(width, 0), number(height, 0))}</p>
        <Pick
          label={words.length}
          value={length}
          options={LENGTHS.map((id) => ({ id, words: words.seconds(id) }))}
          onChange={(one) => choose({ length: one })}
        />
        <Pick
          label={words.rate}
          value={rate}
          options={RATES.map((id) => ({ id, words: id }))}
          onChange={(one) => choose({ rate: one })}
        />
        <Pick
          label={words.fine}
          value={fineness}
          options={FINENESSES.map((id) => ({ id, words: words.finenesses[id] }))}
          onChange={(one) => choose({ fineness: one })}
        />
        {device === "software" ? <p className="soft">{words.software}</p> : null}
        {state && !canTrace ? <p role="alert">{words.cannot}</p> : null}
        {kind ? <p className="soft">{words.kinds[kind]}</p> : null}
        {canTrace && !isVanished && !isWorking ? (
          <p className="film-takes" aria-live="polite">
            {speed === null ? words.timing : words.takes(span(msOf(effort)))}
          </p>
        ) : null}
        {less && !isWorking ? (
          <Button look="outlined" onPress={() => setChosen(less)}>
            {words.instead(span(msOf(less)), lessInWords(less))}
          </Button>
        ) : null}
        {isWorking ? (
          <>
            <progress className="film-progress" aria-label={words.far} max={1} value={job.share ?? 0} />
            <p className="film-row" role="status">
              <span>
                {words.progress(number(done.pictures, 0), number(done.of, 0))}
                {done.left ? `, ${words.left(done.left)}` : ""}
              </span>
              <Button onPress={job.stop}>{words.stop}</Button>
            </p>
          </>
        ) : (
          <Button look={film ? "outlined" : "strong"} isDisabled={!canTrace || isVanished} onPress={make}>
            {words.make}
          </Button>
        )}
        {job.trouble ? <p role="alert">{words.failed(job.trouble)}</p> : null}
        {film ? (
          <>
            <p role="status">
              {words.ready(
                film.kind.toUpperCase(),
                number(film.seconds, 0),
                number(film.file.size / BYTES_PER_MB, 1),
              )}
            </p>
            <p className="film-row">
              <Button look="strong" onPress={() => offerFile(name, film.file)}>
                {words.save}
              </Button>
              <SendButton name={name} file={film.file} />
            </p>
          </>
        ) : null}
        {trouble ? <p role="alert">{trouble}</p> : null}
      </div>
      {isWorking ? (
        <canvas ref={last} className="film-picture" role="img" aria-label={words.picture} />
      ) : null}
      {film && film.kind !== "zip" ? (
        <video
          onLoadedMetadata={(event) => intoView(event.currentTarget)}
          className="film-picture"
          src={film.url}
          loop
          muted
          playsInline
          controls
          autoPlay={!matchMedia("(prefers-reduced-motion: reduce)").matches}
          aria-label={words.preview}
        />
      ) : null}
    </section>
  );
}
