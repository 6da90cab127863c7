/** A film of the piece: which loop, for where, how long and fine; its pictures as they are made; the film itself, to play and keep. */
import { useEffect, useMemo, useState } from "react";
import type { Loop } from "../../core/show/loops.ts";
import { solid } from "../../state/derived.ts";
import { Button } from "../controls/Button.tsx";
import { tracedPicture, useTracing } from "../look/traced.ts";
import { filmWords } from "../messages/film.ts";
import { useWords } from "../messages/words.tsx";
import { fileNameOf } from "../shared/files.ts";
import { intoView } from "../shared/into-view.ts";
import { useStudioStore } from "../studio.ts";
import { useFormat } from "../use-format.ts";
import { usePlan } from "../use-studio.ts";
import { EffortFields } from "./EffortFields.tsx";
import { BEGUN, type Effort, lighter, partsLight, samplesIn, shotOf } from "./effort.ts";
import { type FilmKind, filmKind } from "./encode.ts";
import { KeepRow } from "./KeepRow.tsx";
import { spanInWords } from "./pace.ts";
import { useFilmSpeed } from "./use-film-speed.ts";
import { useFilming } from "./use-filming.ts";
import "./film.css";

const BYTES_PER_MB = 1e6;

/** Beyond that a lighter film is offered. */
const LONG_MS = 300_000;

/** What the person has chosen, and the film that it comes to on this device. */
function useWish(device: "card" | "software") {
  const [loop, setLoop] = useState<Loop>("turn");
  const [chosen, setChosen] = useState<Partial<Effort>>({});
  const choose = (change: Partial<Effort>) => setChosen((now) => ({ ...now, ...change }));
  const effort: Effort = { ...BEGUN[device], ...chosen };
  const { shape, size, length, fineness, rate } = effort;
  const wish = useMemo(() => {
    const wished: Effort = { shape, size, length, fineness, rate };
    return { loop, ...shotOf(device, wished), partsLight: partsLight(device, wished) };
  }, [loop, device, shape, size, length, fineness, rate]);
  return { loop, setLoop, effort, choose, wish };
}

/** What this browser can encode at that size; null until it has said so. */
function useKind(width: number, height: number, rate: number): FilmKind | null {
  const [kind, setKind] = useState<FilmKind | null>(null);
  useEffect(() => {
    let isHere = true;
    void filmKind({ width, height, rate }).then((found) => isHere && setKind(found));
    return () => {
      isHere = false;
    };
  }, [width, height, rate]);
  return kind;
}

/** What another film has otherwise. */
function useChangeInWords(device: "card" | "software", now: Effort): (other: Effort) => string {
  const words = useWords(filmWords);
  const { number } = useFormat();
  return (other) => {
    const shot = shotOf(device, other);
    const said = [
      other.fineness === now.fineness ? "" : words.finenesses[other.fineness],
      other.rate === now.rate ? "" : words.aSecond(other.rate),
      other.size === now.size ? "" : words.pixels(number(shot.width, 0), number(shot.height, 0)),
      other.length === now.length ? "" : words.seconds(other.length),
    ];
    return said.filter((one) => one !== "").join(", ");
  };
}

/** How long the film will take, and a lighter one where that is long. */
function Takes({
  device,
  effort,
  speed,
  onLess,
}: {
  device: "card" | "software";
  effort: Effort;
  /** Milliseconds a sample; null while that is being found out. */
  speed: number | null;
  onLess: (less: Effort) => void;
}) {
  const words = useWords(filmWords);
  const { number } = useFormat();
  const changeInWords = useChangeInWords(device, effort);
  const span = (ms: number) => spanInWords(ms, words, number);
  if (speed === null)
    return (
      <p className="film-takes" aria-live="polite">
        {words.timing}
      </p>
    );
  const msOf = (other: Effort) => speed * samplesIn(shotOf(device, other));
  const less = msOf(effort) > LONG_MS ? lighter(effort, msOf, LONG_MS) : null;
  return (
    <>
      <p className="film-takes" aria-live="polite">
        {words.takes(span(msOf(effort)))}
      </p>
      {less ? (
        <Button look="outlined" onPress={() => onLess(less)}>
          {words.instead(span(msOf(less)), changeInWords(less))}
        </Button>
      ) : null}
    </>
  );
}

/** How far a film is that is being made. */
function Progress({ job, done }: Pick<ReturnType<typeof useFilming>, "job" | "done">) {
  const words = useWords(filmWords);
  const { number } = useFormat();
  const left = done.left === null ? "" : `, ${words.left(spanInWords(done.left, words, number))}`;
  return (
    <>
      <progress className="film-progress" aria-label={words.far} max={1} value={job.share ?? 0} />
      <p className="film-takes" role="status">
        {words.progress(number(done.pictures, 0), number(done.of, 0))}
        {left}
      </p>
    </>
  );
}

export default function FilmSheet() {
  const studio = useStudioStore();
  const words = useWords(filmWords);
  const { number } = useFormat();
  const plan = usePlan();
  const state = useTracing();
  const device = state?.check.code === "software" ? "software" : "card";
  const { loop, setLoop, effort, choose, wish } = useWish(device);
  const kind = useKind(wish.width, wish.height, wish.rate);
  const { job, done, film, latest, make } = useFilming();
  const [trouble, setTrouble] = useState<string | null>(null);
  const isVanished = solid(plan).vanished;
  const canTrace = state?.check.pass ?? false;
  const isWorking = job.share !== null;
  const canMake = canTrace && !isVanished;
  const speed = useFilmSpeed(wish, canMake && !isWorking, setTrouble);
  useEffect(() => {
    tracedPicture(studio);
  }, [studio]);
  const begin = () => {
    setTrouble(null);
    make(wish, speed === null ? null : speed * samplesIn(wish));
  };
  const name = fileNameOf({ ...plan, name: `${plan.name} ${words.ending}` }).replace(
    /\.glintwright\.json$/,
    `.${film?.kind ?? kind ?? "mp4"}`,
  );

  return (
    <section className="film">
      <div className="film-fields">
        <p className="soft">{isVanished ? words.vanished : words.intro}</p>
        <EffortFields
          loop={loop}
          effort={effort}
          width={wish.width}
          height={wish.height}
          onLoop={setLoop}
          onChange={choose}
        />
        {device === "software" ? <p className="soft">{words.software}</p> : null}
        {state && !canTrace ? <p role="alert">{words.cannot}</p> : null}
        {kind ? <p className="soft">{words.kinds[kind]}</p> : null}
        {canMake && !isWorking ? (
          <Takes device={device} effort={effort} speed={speed} onLess={choose} />
        ) : null}
        {isWorking ? <Progress job={job} done={done} /> : null}
        {/* one press for both, so that who pressed it by key still stands there */}
        <div className="film-row">
          <Button
            look={isWorking || film ? "outlined" : "strong"}
            isDisabled={!isWorking && !canMake}
            onPress={isWorking ? job.stop : begin}
          >
            {isWorking ? words.stop : words.make}
          </Button>
        </div>
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
            <KeepRow name={name} file={film.file} save={words.save} />
          </>
        ) : null}
        {trouble ? <p role="alert">{trouble}</p> : null}
      </div>
      {isWorking ? (
        <canvas ref={latest} className="film-picture" role="img" aria-label={words.picture} />
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
