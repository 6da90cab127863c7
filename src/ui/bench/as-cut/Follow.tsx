/** The first offer after a slip: the angles of the tiers still to cut that bring back all that met, and both pieces in a picture. */
import { useMemo } from "react";
import type { Adjusted, AngleChange } from "../../../core/bench/as-cut/adjusted.ts";
import type { AsCutAnswer } from "../../../core/bench/as-cut/as-cut.ts";
import { rigSetting } from "../../../core/bench/rig/rig.ts";
import { cutBall } from "../../../core/geometry/solid.ts";
import type { SolvedPlan } from "../../../core/plan/solved.ts";
import { Button } from "../../controls/Button.tsx";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";
import { usePlan, useSolved, useStudio } from "../../use-studio.ts";
import { tierIndexOf, tierNameOf } from "../parts/names.ts";
import { pieceSketch, viewFrom } from "../parts/piece-sketch.ts";
import { followCut } from "./as-cut-plan.ts";
import { useAdjusted } from "./use-adjusted.ts";

const ELEVATION_DEG = 50;

function Picture({ solved, turned, caption }: { solved: SolvedPlan; turned: number; caption: string }) {
  const sketch = useMemo(() => {
    const { first, count } = solved.tiers[turned];
    const cut = solved.planes.flatMap(({ h }, k) => (h < 1 ? [k] : []));
    const isFront = solved.plan.tiers[turned].side === "front";
    const view = viewFrom(solved.facets[first].azimuthDeg, isFront ? ELEVATION_DEG : -ELEVATION_DEG);
    const isOwn = (i: number) => cut[i] >= first && cut[i] < first + count;
    return pieceSketch(cutBall(cut.map((k) => solved.planes[k])), view, isOwn);
  }, [solved, turned]);
  return (
    <figure className="bench-sketch">
      <svg viewBox="-1.06 -1.06 2.12 2.12" role="img" aria-label={caption}>
        <polygon className="sketch-skin" points={sketch.silhouette} />
        {sketch.faces.map((face) => (
          <polygon
            key={face.points}
            className={face.isOwn ? "sketch-own" : "sketch-face"}
            points={face.points}
          />
        ))}
      </svg>
      <figcaption className="small soft">{caption}</figcaption>
    </figure>
  );
}

/** Angles in the coarsest figures that say them. */
const digitsOf = (deg: number): number => (Math.abs(deg * 10 - Math.round(deg * 10)) < 1e-6 ? 1 : 2);

function ChangeLine({ change }: { change: AngleChange }) {
  const words = useWords(benchWords);
  const { length, armAngle } = useFormat();
  const plan = usePlan();
  const { arm, lap } = plan.rig;
  const radiusMm = plan.piece.diameterMm / 2;
  const { follow } = words.asCut;
  const angles = change.armAngleDeg.map((deg) =>
    armAngle(deg, Math.max(...change.armAngleDeg.map(digitsOf))),
  );
  const depths = change.depthMm.map((mm) => length(mm, 2));
  const pivots =
    arm && lap
      ? change.armAngleDeg.map((armAngleDeg, i) => {
          const pose = { armAngleDeg, planeMm: radiusMm - change.depthMm[i], radiusMm };
          return length(rigSetting(arm, lap, pose).pivotHeightMm);
        })
      : null;
  return (
    <li data-turned={change.tier}>
      <strong>{follow.angle(tierNameOf(plan, change.tier, words), angles[0], angles[1])}</strong>,{" "}
      {follow.depth(depths[0], depths[1])}
      {pivots ? `, ${follow.pivot(pivots[0], pivots[1])}` : null}.
    </li>
  );
}

const countOf = (lost: Adjusted["lost"], isCorner: boolean): number =>
  lost.filter((ids) => ids.length > 2 === isCorner).length;

function Offer({ fit, answer }: { fit: AsCutAnswer; answer: Adjusted }) {
  const { follow: words } = useWords(benchWords).asCut;
  const planned = useSolved();
  const dispatch = useStudio((state) => state.dispatch);
  const { changes, lost, meets, solved } = answer;
  const [pairs, corners] = [countOf(lost, false), countOf(lost, true)];
  if (changes.length === 0) return <p>{meets ? words.depthAlone : words.mostAsIs(pairs, corners)}</p>;
  const turned = tierIndexOf(planned.plan, changes[0].tier);
  const isPlanned = turned >= 0 && turned < planned.tiers.length;
  return (
    <>
      <p className="bench-sentence">{meets ? words.least : words.most(pairs, corners)}</p>
      <ul className="bench-lines">
        {changes.map((change) => (
          <ChangeLine key={change.tier} change={change} />
        ))}
      </ul>
      <div className="bench-both">
        {isPlanned ? <Picture solved={planned} turned={turned} caption={words.planned} /> : null}
        <Picture solved={solved} turned={turned} caption={words.adjusted} />
      </div>
      <Button look="strong" onPress={() => dispatch(followCut(fit, answer))}>
        {words.take}
      </Button>
    </>
  );
}

export function Follow({ answer: fit }: { answer: AsCutAnswer }) {
  const { follow: words } = useWords(benchWords).asCut;
  const { number } = useFormat();
  const { search, look, stop } = useAdjusted(fit);
  const { share, answer, failed } = search;
  return (
    <section className="bench-part" aria-labelledby="bench-follow">
      <h2 id="bench-follow">{words.title}</h2>
      {share !== null ? (
        <div className="bench-row">
          <label className="bench-progress">
            <span>{words.searching(number(share * 100, 0))}</span>
            <progress max={1} value={share} />
          </label>
          <Button look="outlined" onPress={stop}>
            {words.stop}
          </Button>
        </div>
      ) : null}
      {failed ? <p role="alert">{words.failed}</p> : null}
      {answer ? <Offer fit={fit} answer={answer} /> : null}
      {share === null && !answer ? (
        <Button look="outlined" onPress={() => void look()}>
          {words.look}
        </Button>
      ) : null}
    </section>
  );
}
