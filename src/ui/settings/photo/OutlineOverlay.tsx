/**
 * The ball's outline over its photograph: the disc is moved as it is, or any of three points is set on the ball's edge and the
 * circle runs through them. Numbers beside it do the same by keys.
 */
import { type PointerEvent, useRef, useState } from "react";
import { circleThrough, pointsOn, type ThreePoints, turnsOf } from "../../../core/optics/circle-through.ts";
import type { Outline } from "../../../core/optics/photo.ts";
import type { Raster } from "../../../core/optics/raster.ts";

/** What the hand holds: the disc, or the point at this position. */
interface Grip {
  readonly part: "disc" | 0 | 1 | 2;
  readonly from: Outline;
  readonly points: ThreePoints;
  readonly at: readonly [number, number];
}

const LEAST_RADIUS = 8;
/** A circle may be so many times as wide as the photograph; beyond that three points are a line. */
const MOST_SHARE = 2;
/** Where the points begin: above, and below on either side (y runs down). */
const FIRST_TURNS = [-Math.PI / 2, Math.PI / 6, (5 * Math.PI) / 6] as const;

export function OutlineOverlay({
  photo,
  outline,
  label,
  onChange,
}: {
  photo: Raster;
  outline: Outline;
  label: string;
  onChange: (outline: Outline) => void;
}) {
  const svg = useRef<SVGSVGElement>(null);
  const grip = useRef<Grip | null>(null);
  const [turns, setTurns] = useState<readonly [number, number, number]>(FIRST_TURNS);
  const points = pointsOn(outline, turns);
  const longest = Math.max(photo.width, photo.height);
  const place = (event: PointerEvent): readonly [number, number] => {
    const box = svg.current?.getBoundingClientRect();
    if (!box) return [0, 0];
    return [
      ((event.clientX - box.left) / box.width) * photo.width,
      ((event.clientY - box.top) / box.height) * photo.height,
    ];
  };
  const take = (part: Grip["part"]) => (event: PointerEvent<SVGElement>) => {
    event.currentTarget.setPointerCapture(event.pointerId);
    grip.current = { part, from: outline, points, at: place(event) };
  };
  const move = (event: PointerEvent) => {
    if (!grip.current) return;
    const { part, from, points: before, at } = grip.current;
    const [x, y] = place(event);
    const [dx, dy] = [x - at[0], y - at[1]];
    if (part === "disc") {
      onChange({ ...from, x: from.x + dx, y: from.y + dy });
      return;
    }
    const [px, py] = before[part];
    const next = before.map((point, i) => (i === part ? ([px + dx, py + dy] as const) : point));
    const three = next as unknown as ThreePoints;
    const circle = circleThrough(three, MOST_SHARE * longest);
    // On a line there is no circle: the last one stays until the point has left it.
    if (!circle || circle.r < LEAST_RADIUS) return;
    setTurns(turnsOf(circle, three));
    onChange(circle);
  };
  const leave = () => {
    grip.current = null;
  };
  return (
    <svg
      ref={svg}
      className="photo-outline"
      viewBox={`0 0 ${photo.width} ${photo.height}`}
      role="img"
      aria-label={label}
      onPointerMove={move}
      onPointerUp={leave}
      onPointerCancel={leave}
    >
      <circle
        className="photo-disc"
        cx={outline.x}
        cy={outline.y}
        r={outline.r}
        onPointerDown={take("disc")}
      />
      {points.map(([x, y], i) => (
        // Points have no name but their place.
        // biome-ignore lint/suspicious/noArrayIndexKey: as above
        <g key={i} className="photo-point" onPointerDown={take(i as 0 | 1 | 2)}>
          <circle className="photo-reach" cx={x} cy={y} r={longest / 12} />
          <circle className="photo-rim" cx={x} cy={y} r={longest / 45} />
        </g>
      ))}
    </svg>
  );
}
