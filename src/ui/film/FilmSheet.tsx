/** A film of the piece: which loop, for where, how long and fine; its pictures as they are made; the film itself, to play and keep. */
import { useEffect, useRef, useState } from "react";
import { LOOPS, type Loop } from "../../core/show/loops.ts";
import { solid } from "../../state/derived.ts";
import { Button } from "../controls/Button.tsx";
import { Pick } from "../controls/Pick.tsx";
import { tracedPicture, useTracing } from "../look/traced.ts";
import { useJob } from "../look/use-job.ts";
import { filmWords } from "../messages/film.ts";
import { useWords } from "../messages/words.tsx";
import { fileNameOf, offerFile } from "../shared/files.ts";
import { canHandOver, handOver } from "../shared/hand-over.ts";
import { useFormat } from "../use-format.ts";
import { usePlan } from "../use-studio.ts";
import { type FilmKind, filmKind } from "./encode.ts";
import { type Film, makeFilm, RATE } from "./make-film.ts";
import { timeLeft } from "./time-left.ts";
import "./film.css";

const SHAPES = {
  shop: { card: [1280, 960], software: [320, 240] },
  square: { card: [1080, 1080], software: [270, 270] },
  story: { card: [1080, 1920], software: [216, 384] },
} as const;
type Shape = keyof typeof SHAPES;
const SHAPE_NAMES = Object.keys(SHAPES) as Shape[];
const SAMPLES = { draft: 8, good: 32, best: 128 } as const;
type Fineness = keyof typeof SAMPLES;
const FINENESSES = Object.keys(SAMPLES) as Fineness[];
const LENGTHS = ["3", "6", "12"] as const;
type Length = (typeof LENGTHS)[number];

const BYTES_PER_MB = 1e6;

/** What was made, as long as this sheet is open; its address is let go with it. */
function useFilm() {
  const [film, setFilm] = useState<(Film & { readonly url: string; readonly seconds: number }) | null>(null);
  const url = film?.url;
  useEffect(() => () => (url === undefined ? undefined : URL.revokeObjectURL(url)), [url]);
  return [film, setFilm] as const;
}

export default function FilmSheet() {
  const words = useWords(filmWords);
  const { number } = useFormat();
  const plan = usePlan();
  const job = useJob();
  const state = useTracing();
  const [loop, setLoop] = useState<Loop>("turn");
  const [shape, setShape] = useState<Shape>("square");
  const [length, setLength] = useState<Length>("6");
  const [fineness, setFineness] = useState<Fineness>("draft");
  const [kind, setKind] = useState<FilmKind | null>(null);
  const [done, setDone] = useState({ pictures: 0, of: 1, left: "" });
  const [film, setFilm] = useFilm();
  const [trouble, setTrouble] = useState<string | null>(null);
  const last = useRef<HTMLCanvasElement>(null);
  const isSoftware = state?.check.code === "software";
  const [width, height] = SHAPES[shape][isSoftware ? "software" : "card"];
  const isVanished = solid(plan).vanished;
  const canTrace = state?.check.pass ?? false;
  const isWorking = job.share !== null;

  useEffect(() => {
    tracedPicture();
  }, []);
  useEffect(() => {
    let isHere = true;
    void filmKind({ width, height, rate: RATE }).then((found) => isHere && setKind(found));
    return () => {
      isHere = false;
    };
  }, [width, height]);

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
      const seconds = Number(length);
      setDone({ pictures: 0, of: seconds * RATE, left: "" });
      const begun = performance.now();
      const wish = { loop, width, height, seconds, samples: SAMPLES[fineness] };
      const made = await makeFilm(plan, wish, signal, (pictures, of, picture) => {
        show(picture);
        setDone({ pictures, of, left: timeLeft(performance.now() - begun, pictures, of, words, number) });
        onShare(pictures / of);
      });
      setFilm({ ...made, url: URL.createObjectURL(made.file), seconds });
    });
  const name = fileNameOf({ ...plan, name: `${plan.name} ${words.ending}` }).replace(
    /\.glintwright\.json$/,
    `.${film?.kind ?? kind ?? "mp4"}`,
  );
  const send = async () => {
    try {
      if (film) await handOver(name, film.file);
    } catch (error) {
      setTrouble(words.notSent(error instanceof Error ? error.message : String(error)));
    }
  };

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
          options={SHAPE_NAMES.map((id) => ({ id, words: words.shapes[id] }))}
          onChange={setShape}
        />
        <p className="soft">{words.size(number(width, 0), number(height, 0))}</p>
        <Pick
          label={words.length}
          value={length}
          options={LENGTHS.map((id) => ({ id, words: words.seconds(id) }))}
          onChange={setLength}
        />
        <Pick
          label={words.fine}
          value={fineness}
          options={FINENESSES.map((id) => ({ id, words: words.finenesses[id] }))}
          onChange={setFineness}
        />
        {state && !canTrace ? <p role="alert">{words.cannot}</p> : null}
        {kind ? <p className="soft">{words.kinds[kind]}</p> : null}
        {isWorking ? (
          <p className="film-row" role="status">
            <span>
              {words.progress(number(done.pictures, 0), number(done.of, 0))}
              {done.left ? `, ${done.left}` : ""}
            </span>
            <Button onPress={job.stop}>{words.stop}</Button>
          </p>
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
              {canHandOver(name, film.file.type) ? (
                <Button look="outlined" onPress={() => void send()}>
                  {words.share}
                </Button>
              ) : null}
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
