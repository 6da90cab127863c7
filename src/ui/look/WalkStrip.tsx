/** As you walk past: the piece leaning from -40 to 40 degrees, each with what one sees in words and numbers. */
import { useState } from "react";
import { Button as Press } from "react-aria-components/Button";
import type { WalkPast } from "../../core/optics/walk-past.ts";
import type { Plan } from "../../core/plan/document.ts";
import { DEFAULT_OPTIONS, packScene } from "../../render/pack-scene.ts";
import { Button } from "../controls/Button.tsx";
import { lookWords } from "../messages/look.ts";
import { useWords } from "../messages/words.tsx";
import { eyeFrame, HOME, type Orbit } from "../piece/camera.ts";
import { useViewport } from "../piece/viewport.ts";
import { useSettledPlan } from "../settled.ts";
import { useStudioStore } from "../studio.ts";
import { useFormat } from "../use-format.ts";
import { lookPool, unlit } from "./look-pool.ts";
import { sceneOf, withoutTable } from "./look-scene.ts";
import { lookOf } from "./look-settings.ts";
import { stillPicture, useTracing, viewOf } from "./traced.ts";
import { useJob } from "./use-job.ts";

const TILTS = [-40, -30, -20, -10, 0, 10, 20, 30, 40];
const SIZE = 192;
const SAMPLES = 16;
/** Shares are counted on a grid: no finer than this, per cent. */
const SHARE_STEP = 5;

interface Step {
  readonly tilt: number;
  readonly url: string;
  readonly seen: WalkPast;
}

/** The eye that sees the front lean by `tilt` degrees: over the pole and beyond, so that up stays up. */
const leaning = (tilt: number): Orbit => ({ ...HOME, azimuthDeg: -90, elevationDeg: 90 - tilt });

export function urlOf(picture: ImageData): string {
  const canvas = document.createElement("canvas");
  [canvas.width, canvas.height] = [picture.width, picture.height];
  canvas.getContext("2d")?.putImageData(picture, 0, 0);
  return canvas.toDataURL("image/png");
}

export function WalkStrip() {
  const studio = useStudioStore();
  const words = useWords(lookWords).walk;
  const plan = useSettledPlan();
  const job = useJob();
  const canTrace = useTracing()?.check.pass ?? false;
  const [strip, setStrip] = useState<{ plan: Plan; steps: readonly Step[] } | null>(null);

  const trace = () =>
    job.start(async (signal, onShare) => {
      // The piece leans in the hand, whatever it lies on.
      const settings = withoutTable(lookOf(studio).getState());
      const scene = sceneOf(plan, settings);
      const packed = packScene(scene, { ...DEFAULT_OPTIONS, hasDispersion: settings.hasDispersion });
      const steps: Step[] = [];
      for (const tilt of TILTS) {
        const view = leaning(tilt);
        const options = { width: SIZE, height: SIZE, samples: SAMPLES, exposure: settings.exposure, signal };
        const { right, up, out: back } = eyeFrame(view);
        const question = { scene: unlit(scene), right, up, back };
        const [picture, seen] = await Promise.all([
          stillPicture(studio, packed, viewOf(view, 1), options),
          lookPool.run("walkPast", question, { signal }),
        ]);
        steps.push({ tilt, url: urlOf(picture), seen });
        setStrip({ plan, steps: [...steps] });
        onShare(steps.length / TILTS.length);
      }
    });

  return (
    <section className="look-part">
      <h2>{words.title}</h2>
      <p className="look-note">{words.what}</p>
      {job.share === null ? (
        <Button look="outlined" isDisabled={!canTrace} onPress={trace}>
          {strip ? words.again : words.make}
        </Button>
      ) : (
        <p className="look-row" role="status">
          {words.progress(Math.round(job.share * TILTS.length), TILTS.length)}
          <Button onPress={job.stop}>{words.stop}</Button>
        </p>
      )}
      {strip && strip.plan !== plan ? <p className="look-note">{words.old}</p> : null}
      {job.trouble ? (
        <p className="look-trouble" role="alert">
          {job.trouble}
        </p>
      ) : null}
      <ol className="walk">
        {strip?.steps.map((step) => (
          <WalkStep key={step.tilt} step={step} hasInside={Boolean(strip.plan.piece.inside?.length)} />
        ))}
      </ol>
    </section>
  );
}

function WalkStep({ step, hasInside }: { step: Step; hasInside: boolean }) {
  const { eye } = useViewport();
  const words = useWords(lookWords).walk;
  const format = useFormat();
  const deg = format.number(step.tilt, 0);
  const share = (value: number) => format.number(Math.round((100 * value) / SHARE_STEP) * SHARE_STEP, 0);
  const inside = words.images(step.seen.images);
  return (
    <li className="walk-step">
      <Press
        className="walk-picture"
        aria-label={words.turnTo(deg)}
        onPress={() => {
          const { distance } = eye.getState().view;
          eye.glideTo({ ...leaning(step.tilt), distance });
        }}
      >
        <img src={step.url} alt="" width={SIZE / 2} height={SIZE / 2} />
      </Press>
      <p>
        <b>{words.tilt(deg)}</b>
        {hasInside ? <span>{inside}</span> : null}
        <span>{words.back(share(step.seen.back))}</span>
        <span>{words.through(share(step.seen.through))}</span>
      </p>
    </li>
  );
}
