/** A film under way, and the one that was made: how far it is, how long it still takes, its latest picture. */
import { type RefObject, useEffect, useRef, useState } from "react";
import { type Job, useJob } from "../look/use-job.ts";
import { intoView } from "../shared/into-view.ts";
import { useStudioStore } from "../studio.ts";
import { usePlan } from "../use-studio.ts";
import { type Film, type FilmWish, makeFilm } from "./make-film.ts";
import { marked, msLeft } from "./pace.ts";

interface Made extends Film {
  readonly url: string;
  readonly seconds: number;
}

interface Done {
  readonly pictures: number;
  readonly of: number;
  /** Milliseconds; null while nothing says so. */
  readonly left: number | null;
}

/** What was made, as long as this sheet is open; its address is let go with it. */
function useMade() {
  const [film, setFilm] = useState<Made | null>(null);
  const url = film?.url;
  useEffect(() => () => (url === undefined ? undefined : URL.revokeObjectURL(url)), [url]);
  return [film, setFilm] as const;
}

/** Draws a picture into the page, as large as it is. */
function draw(canvas: HTMLCanvasElement | null, picture: OffscreenCanvas): void {
  if (!canvas) return;
  [canvas.width, canvas.height] = [picture.width, picture.height];
  canvas.getContext("2d")?.drawImage(picture, 0, 0);
}

export function useFilming(): {
  readonly job: Job;
  readonly done: Done;
  readonly film: Made | null;
  /** Where the latest picture is shown. */
  readonly latest: RefObject<HTMLCanvasElement | null>;
  /** @param toldMs how long it was said to take, which holds until pictures say how fast they are made; null: not known */
  readonly make: (wish: Required<FilmWish>, toldMs: number | null) => void;
} {
  const studio = useStudioStore();
  const plan = usePlan();
  const job = useJob();
  const [done, setDone] = useState<Done>({ pictures: 0, of: 1, left: null });
  const [film, setFilm] = useMade();
  const latest = useRef<HTMLCanvasElement>(null);
  const make = (wish: Required<FilmWish>, toldMs: number | null) =>
    job.start(async (signal, onShare) => {
      setFilm(null);
      const of = wish.seconds * wish.rate;
      setDone({ pictures: 0, of, left: toldMs });
      let marks: ReturnType<typeof marked> = [];
      const onPicture = (pictures: number, _of: number, picture: OffscreenCanvas) => {
        draw(latest.current, picture);
        if (pictures === 1) intoView(latest.current);
        marks = marked(marks, pictures / of, performance.now());
        const ms = msLeft(marks) ?? (toldMs === null ? null : toldMs * (1 - pictures / of));
        setDone({ pictures, of, left: pictures === of ? null : ms });
      };
      const made = await makeFilm(studio, plan, wish, signal, onPicture, onShare);
      setFilm({ ...made, url: URL.createObjectURL(made.file), seconds: wish.seconds });
    });
  return { job, done, film, latest, make };
}
