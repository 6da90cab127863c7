/** The strip itself: the skin's tone, poles, equator, the ink mark; past both borders it goes on, paler. */
import { memo } from "react";
import { placesOf, type SkinLayout } from "./skin-layout.ts";

const NAMES_FIT_PX = 560;

export const SkinGround = memo(function SkinGround({ layout }: { layout: SkinLayout }) {
  const { strip, window, x, y } = layout;
  return (
    <g transform={`translate(${x} ${y})`}>
      <defs>
        <clipPath id="skin-window">
          <rect x={window.from} y={-1} width={window.to - window.from} height={strip.height + 2} />
        </clipPath>
        <pattern
          id="skin-hatch"
          width="5"
          height="5"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <line className="skin-hatch" x1="0" y1="0" x2="0" y2="5" />
        </pattern>
      </defs>
      <rect
        className="skin-past"
        x={window.from}
        y={0}
        width={window.to - window.from}
        height={strip.height}
      />
      <rect className="skin-sheet" x={0} y={0} width={strip.width} height={strip.height} />
      <line className="skin-pole" x1={window.from} y1={0} x2={window.to} y2={0} />
      <line className="skin-pole" x1={window.from} y1={strip.height} x2={window.to} y2={strip.height} />
      <line
        className="skin-equator"
        x1={window.from}
        y1={strip.height / 2}
        x2={window.to}
        y2={strip.height / 2}
      />
    </g>
  );
});

/** The line that the maker draws on the skin, on top of the facets it may be ground away by. */
export const InkMark = memo(function InkMark({
  layout,
  azimuthDeg,
}: {
  layout: SkinLayout;
  azimuthDeg: number;
}) {
  return placesOf(layout, (azimuthDeg * Math.PI) / 180).map((x) => (
    <g key={x} className="skin-ink">
      <line x1={x} y1={0} x2={x} y2={layout.strip.height} />
    </g>
  ));
});

interface SkinName {
  readonly words: string;
  readonly at: readonly [number, number];
  readonly isInk?: boolean;
}

/** Names of the poles and of the ink mark, where they stand; a short strip has no room for them. */
export function namesOf(
  layout: SkinLayout,
  azimuthDeg: number,
  words: { readonly frontPole: string; readonly backPole: string; readonly inkMark: string },
): SkinName[] {
  const { strip } = layout;
  if (strip.width <= NAMES_FIT_PX) return [];
  const low = strip.height - 7;
  return [
    { words: words.frontPole, at: [6, 17] },
    { words: words.backPole, at: [6, low] },
    ...placesOf(layout, (azimuthDeg * Math.PI) / 180).map((x) => ({
      words: words.inkMark,
      at: [x + 7, low] as const,
      isInk: true,
    })),
  ];
}

/** Over every outline. */
export const SkinNames = memo(function SkinNames({ names }: { names: readonly SkinName[] }) {
  return (
    <g className="skin-names">
      {names.map(({ words, at: [x, y], isInk }) => (
        <text key={x + words} className={isInk ? "skin-ink-name rimmed" : "rimmed"} x={x} y={y}>
          {words}
        </text>
      ))}
    </g>
  );
});
