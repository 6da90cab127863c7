/** What each measure of the wall is, as a drawing and one sentence. */
import { ideasWords } from "../messages/ideas.ts";
import { useWords } from "../messages/words.tsx";
import { AXES, type Axis } from "./draft.ts";

interface Sketch {
  /** The piece in outline. */
  readonly body?: string;
  /** What is counted, drawn heavy. */
  readonly heavy?: string;
  /** What is counted, filled. */
  readonly full?: string;
  /** The way of the light. */
  readonly light?: string;
}

const BALL = "M8 32a24 24 0 1 0 48 0a24 24 0 1 0 -48 0";
/** A ball cut below to a blunt point. */
const CUT = "M11 21A24 24 0 0 1 53 21L53 30L32 54L11 30Z";
const dot = (x: number, y: number, r: number) =>
  `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`;
const HEXAGON = "M32 16L46 24L46 40L32 48L18 40L18 24Z";
const RING = "M32 16L32 8M46 24L53 20M46 40L53 44M32 48L32 56M18 40L11 44M18 24L11 20";

const SKETCHES: Readonly<Record<Axis, Sketch>> = {
  minutes: { body: BALL, heavy: "M32 14L32 32L44 40" },
  facets: { body: BALL, heavy: `${HEXAGON}${RING}` },
  tiers: { body: BALL, heavy: "M10 24A24 9 0 0 0 54 24M9 38A24 9 0 0 0 55 38" },
  leastFacetMm: {
    body: `${BALL}${HEXAGON}${RING}`,
    full: "M46 24L53 20L56 32L53 44L46 40Z",
    heavy: "M44 50L58 50M46 47L43 50L46 53M56 47L59 50L56 53",
  },
  skinShare: { body: "M14 48L50 48", heavy: "M14 48A24 24 0 1 1 50 48" },
  back: { body: CUT, light: "M24 2L24 45L40 45L40 2M36 7L40 2L44 7" },
  through: { body: CUT, light: "M28 2L28 49L38 62M33 59L38 62L39 56" },
  inside: { body: BALL, full: dot(32, 36, 8), light: "M32 2L32 27M28 22L32 27L36 22" },
  images: { body: BALL, full: `${dot(32, 32, 6)}${dot(17, 30, 4)}${dot(47, 30, 4)}${dot(32, 48, 4)}` },
  sparkle: {
    body: `${BALL}${HEXAGON}${RING}`,
    full: "M32 16L46 24L53 20L32 8ZM18 40L11 44L11 20L18 24Z",
    light: "M50 4A30 30 0 0 1 60 16M56 14L60 16L61 11",
  },
};

function Drawing({ of }: { of: Axis }) {
  const { body, heavy, full, light } = SKETCHES[of];
  return (
    <svg className="idea-sketch" viewBox="0 0 64 64" aria-hidden="true">
      {full ? <path d={full} className="idea-sketch-full" /> : null}
      {body ? <path d={body} /> : null}
      {heavy ? <path d={heavy} className="idea-sketch-heavy" /> : null}
      {light ? <path d={light} className="idea-sketch-light" /> : null}
    </svg>
  );
}

export function MeasuresPart({ isOpen }: { isOpen: boolean }) {
  const words = useWords(ideasWords);
  return (
    <details className="idea-part" open={isOpen}>
      <summary>{words.measures.title}</summary>
      <p className="soft">{words.measures.how}</p>
      <ul className="idea-measures">
        {AXES.map((axis) => (
          <li key={axis}>
            <Drawing of={axis} />
            <p>
              <b>{words.axis[axis]}</b>
              <br />
              {words.measures[axis]}
            </p>
          </li>
        ))}
      </ul>
      <p className="soft">{words.measures.eyes}</p>
    </details>
  );
}
