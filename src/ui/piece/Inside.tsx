/** The designs inside, drawn as matte bodies. Loaded when there are some: the first view of a clear piece need not wait for it. */
import { useMemo } from "react";
import type { Piece } from "../../core/plan/document.ts";
import { insideBodies } from "./inside-geometry.ts";
import { Matte } from "./Matte.tsx";

export default function Inside({ piece }: { piece: Piece }) {
  const bodies = useMemo(() => insideBodies(piece), [piece]);
  return bodies.map(({ key, geometry, color }) => <Matte key={key} geometry={geometry} color={color} />);
}
