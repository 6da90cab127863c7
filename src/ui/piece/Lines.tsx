/** Lines of a set width in CSS pixels, many pieces in one draw. */
import { useEffect, useMemo } from "react";
import type { Color } from "three";
import { LineMaterial } from "three/addons/lines/LineMaterial.js";
import { LineSegments2 } from "three/addons/lines/LineSegments2.js";
import { LineSegmentsGeometry } from "three/addons/lines/LineSegmentsGeometry.js";
import type { Vec3 } from "../../core/geometry/vec.ts";
import { useViewport } from "./viewport.ts";

/** A little outside the glass, so that a line on its surface is not half hidden by it. */
const LIFT = 1.0012;

/** Polylines as separate segments, lifted off the surface. */
export function segmentsOf(lines: readonly (readonly Vec3[])[], lift = LIFT): number[] {
  const flat: number[] = [];
  for (const line of lines)
    for (let i = 0; i + 1 < line.length; i++)
      for (const p of [line[i], line[i + 1]]) flat.push(p[0] * lift, p[1] * lift, p[2] * lift);
  return flat;
}

export function Lines({
  segments,
  color,
  width,
  opacity = 1,
  order = 4,
}: {
  /** Six numbers a segment. */
  segments: readonly number[];
  color: Color;
  width: number;
  opacity?: number;
  order?: number;
}) {
  const { frames } = useViewport();
  const line = useMemo(() => {
    const material = new LineMaterial({ transparent: true, depthWrite: false });
    const made = new LineSegments2(new LineSegmentsGeometry(), material);
    made.frustumCulled = false;
    return made;
  }, []);
  useEffect(
    () => () => {
      line.geometry.dispose();
      line.material.dispose();
    },
    [line],
  );
  useEffect(() => {
    line.geometry.dispose();
    line.geometry = new LineSegmentsGeometry();
    line.visible = segments.length > 0;
    if (segments.length > 0) line.geometry.setPositions(segments as number[]);
    frames.request();
  }, [frames, line, segments]);
  useEffect(() => {
    line.material.color.copy(color);
    line.material.linewidth = width;
    line.material.opacity = opacity;
    line.renderOrder = order;
    frames.request();
  }, [frames, line, color, width, opacity, order]);
  return <primitive object={line} />;
}
