/** Width against strokes for the first facet of a tier: why the last tenth of a millimetre takes the longest. */
import { useMemo } from "react";
import type { BenchTier } from "../../../core/bench/bench.ts";
import { stagesOf } from "../../../core/bench/stages/default-stages.ts";
import { endsByLooking } from "../../../core/bench/stages/stages.ts";
import type { CurvePoint } from "../../../core/bench/stages/stroke-curve.ts";
import { sayableStrokes } from "../../../core/bench/stages/strokes.ts";
import type { CurveQuestion } from "../../../worker/bench-worker.ts";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";
import { usePlan } from "../../use-studio.ts";
import { benchPool } from "../bench-worker-client.ts";
import { tierName } from "../parts/names.ts";
import { useAsked } from "../use-asked.ts";

interface Curve {
  readonly points: readonly CurvePoint[];
  readonly isGuess: boolean;
}
const askCurve = (question: CurveQuestion): Promise<Curve> => benchPool.run("curve", question);

const BOX = { width: 320, height: 190, left: 12, right: 16, top: 34, foot: 34 } as const;

/** The curve with its point at half of the strokes put in, and that point's place. */
function withHalf(points: readonly CurvePoint[]): { points: readonly CurvePoint[]; half: number } {
  const strokes = points[points.length - 1].strokes / 2;
  const after = Math.max(
    1,
    points.findIndex((p) => p.strokes >= strokes),
  );
  const [p, q] = [points[after - 1], points[after]];
  const t = (strokes - p.strokes) / (q.strokes - p.strokes || 1);
  const between = (key: keyof CurvePoint) => p[key] + t * (q[key] - p[key]);
  const middle = { strokes, depthMm: between("depthMm"), widthMm: between("widthMm") };
  return { points: points.toSpliced(after, 0, middle), half: after };
}

/** Screen places of the curve's points. */
function places(points: readonly CurvePoint[]) {
  const last = points[points.length - 1];
  const [strokes, width] = [last.strokes || 1, Math.max(...points.map((p) => p.widthMm)) || 1];
  const across = BOX.width - BOX.left - BOX.right;
  const high = BOX.height - BOX.top - BOX.foot;
  return points.map((p) => [
    BOX.left + (across * p.strokes) / strokes,
    BOX.height - BOX.foot - (high * p.widthMm) / width,
  ]);
}

function Plot({ curve, name }: { curve: Curve; name: string }) {
  const { work: words } = useWords(benchWords);
  const { length, number } = useFormat();
  const { points, half } = withHalf(curve.points);
  const xy = places(points);
  const [end, first] = [points[points.length - 1], points[0]];
  const say = (n: number) => number(sayableStrokes(n), 0);
  const last = points.length - 1;
  // Where half of the strokes read as many as all of them, the end says it.
  const told = say(points[half].strokes) === say(end.strokes) ? [last] : [half, last];
  return (
    <figure className="bench-plot">
      <svg
        viewBox={`0 0 ${BOX.width} ${BOX.height}`}
        role="img"
        aria-label={words.plotOf(name, length(first.widthMm), length(end.widthMm), say(end.strokes))}
      >
        <line
          className="plot-floor"
          x1={BOX.left}
          x2={BOX.width - BOX.right}
          y1={BOX.height - BOX.foot}
          y2={BOX.height - BOX.foot}
        />
        <polyline className="plot-line" points={xy.map((p) => p.join(",")).join(" ")} />
        {told.map((i) => (
          <g key={i}>
            <line
              className="plot-drop"
              x1={xy[i][0]}
              x2={xy[i][0]}
              y1={xy[i][1]}
              y2={BOX.height - BOX.foot}
            />
            <circle className="plot-dot" cx={xy[i][0]} cy={xy[i][1]} r={4} />
            <text x={xy[i][0]} y={xy[i][1] - 10} textAnchor="end">
              {length(points[i].widthMm)}
            </text>
            <text x={xy[i][0]} y={BOX.height - BOX.foot + 20} textAnchor={i === half ? "middle" : "end"}>
              {say(points[i].strokes)}
            </text>
          </g>
        ))}
      </svg>
      <figcaption className="small soft">{curve.isGuess ? words.plotGuess : words.plotCaption}</figcaption>
    </figure>
  );
}

export function StrokePlot({ tier, index, stage }: { tier: BenchTier; index: number; stage: number }) {
  const plan = usePlan();
  const words = useWords(benchWords);
  const contactRadiusMm = tier.setting?.contactRadiusMm ?? null;
  const question = useMemo(
    (): CurveQuestion => ({ plan, tierIndex: index, stage, contactRadiusMm }),
    [plan, index, stage, contactRadiusMm],
  );
  const { answer } = useAsked(question, askCurve);
  const looks = endsByLooking(stagesOf(plan.rig), stage);
  if (!answer || looks || answer.points.every((p) => p.widthMm === 0)) return null;
  return <Plot curve={answer} name={tierName(plan, index, words)} />;
}
