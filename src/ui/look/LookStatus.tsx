/** One quiet line on how far the picture is, or why there is none. */
import { useEffect, useState } from "react";
import { scale } from "../../core/geometry/vec.ts";
import type { Camera } from "../../core/optics/camera.ts";
import { DEFAULT_OPTIONS } from "../../render/pack-scene.ts";
import type { View } from "../../render/view.ts";
import { lookWords } from "../messages/look.ts";
import { useWords } from "../messages/words.tsx";
import { useViewport } from "../piece/viewport.ts";
import { useStudioStore } from "../studio.ts";
import { useFormat } from "../use-format.ts";
import { lookPool, unlit } from "./look-pool.ts";
import { damagedPictures, sceneOf, withoutTable } from "./look-scene.ts";
import { lookOf } from "./look-settings.ts";
import { statusLine } from "./status-line.ts";
import { useTracing, viewOf } from "./traced.ts";
import { useLookedAt } from "./use-looked-at.ts";

/** Pictures inside that can't be shown: nothing is seen in their place. */
function Damaged() {
  const words = useWords(lookWords).status;
  const damaged = damagedPictures(useLookedAt());
  return damaged.length === 0 ? null : <span className="look-lost">{words.damaged(damaged.join(", "))}</span>;
}

export function LookStatus() {
  const words = useWords(lookWords).status;
  const state = useTracing();
  if (!state) return null;
  if (state.phase === "unable") {
    return (
      <div className="look-status look-unable" role="alert">
        <p>{words.unable}</p>
        <p className="soft">{words.cause[state.check.pass ? "shader-refused" : state.check.code]}</p>
        <details>
          <summary>{words.details}</summary>
          <p>{state.error ?? state.check.detail}</p>
        </details>
      </div>
    );
  }
  return (
    <div className="look-status">
      <p role="status">
        {statusLine(state, words)}
        <Damaged />
      </p>
      {state.phase === "clean" ? <LostLight /> : null}
    </div>
  );
}

function cameraOf({ eye: at, back, right, up, fieldDeg }: View): Camera {
  const spread = Math.tan((fieldDeg * Math.PI) / 360);
  return { at, forward: scale(back, -1), right: scale(right, spread), up: scale(up, spread) };
}

/** What is less is said to be less: a share of the light. */
const NOTEWORTHY = 1e-3;

/** What the cap on a path's surfaces leaves to the light's mean in the picture that shows, counted once it is clean; why is one press away, since the words lie over the piece. */
function LostLight() {
  const studio = useStudioStore();
  const { eye } = useViewport();
  const words = useWords(lookWords).status;
  const format = useFormat();
  const plan = useLookedAt();
  const [lost, setLost] = useState<number | null>(null);
  useEffect(() => {
    const question = {
      scene: unlit(sceneOf(plan, withoutTable(lookOf(studio).getState()))),
      camera: cameraOf(viewOf(eye.getState().view, 1)),
      cap: DEFAULT_OPTIONS.maxMeetings,
    };
    const over = new AbortController();
    lookPool.run("lostLight", question, { signal: over.signal }).then(setLost, (error) => {
      if (!over.signal.aborted) throw error;
    });
    return () => over.abort();
  }, [plan, eye, studio]);
  if (lost === null) return null;
  if (lost < NOTEWORTHY) return <p>{words.lostNone}</p>;
  return (
    <details className="look-guess">
      <summary>{words.lostSome(format.number(100 * lost, 1))}</summary>
      <p>{words.lostWhy(DEFAULT_OPTIONS.maxMeetings)}</p>
    </details>
  );
}
