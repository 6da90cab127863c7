/** The ball's outline over its photograph: the disc is moved, the handle on its rim sets its size. Numbers beside it do the same by keys. */
import { type PointerEvent, useRef } from "react";
import type { Outline } from "../../../core/optics/photo.ts";
import type { Raster } from "../../../core/optics/raster.ts";

interface Grip {
  readonly part: "disc" | "rim";
  readonly from: Outline;
  readonly at: readonly [number, number];
}

const LEAST_RADIUS = 8;

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
    grip.current = { part, from: outline, at: place(event) };
  };
  const move = (event: PointerEvent) => {
    if (!grip.current) return;
    const { part, from, at } = grip.current;
    const [x, y] = place(event);
    if (part === "disc") onChange({ ...from, x: from.x + x - at[0], y: from.y + y - at[1] });
    else onChange({ ...from, r: Math.max(LEAST_RADIUS, Math.hypot(x - from.x, y - from.y)) });
  };
  const leave = () => {
    grip.current = null;
  };
  const handle = Math.max(photo.width, photo.height) / 40;
  const turn = Math.SQRT1_2 * outline.r;
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
      <circle
        className="photo-rim"
        cx={outline.x + turn}
        cy={outline.y + turn}
        r={handle}
        onPointerDown={take("rim")}
      />
    </svg>
  );
}
