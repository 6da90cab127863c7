/** What is selected in the plan, marked on the traced piece: its outlines where they face the eye, doubled as on the drawn piece. */
import { useEffect, useRef, useState } from "react";
import { useStore } from "zustand";
import type { SolidFacet } from "../../core/geometry/solid-types.ts";
import { dot, sub, type Vec3 } from "../../core/geometry/vec.ts";
import type { View } from "../../render/view.ts";
import { eye } from "../piece/eye.ts";
import { outlinePoints } from "../piece/outline-points.ts";
import { useSolid, useSolved, useStudio } from "../use-studio.ts";
import { useLook } from "./look-settings.ts";
import { viewOf } from "./traced.ts";

/** Digits of a place in the picture, in hundredths of its half: finer than any pixel. */
const DIGITS = 2;

/** SVG path of facets as seen in a picture that reaches from -100 to 100 both ways, y down; those turned away are left out. */
export function marksPath(facets: readonly SolidFacet[], view: View, aspect: number): string {
  const high = Math.tan((view.fieldDeg * Math.PI) / 360);
  const place = (p: Vec3): string => {
    const from = sub(p, view.eye);
    const depth = -dot(from, view.back) * high;
    const x = (100 * dot(from, view.right)) / (depth * aspect);
    const y = (-100 * dot(from, view.up)) / depth;
    return `${x.toFixed(DIGITS)} ${y.toFixed(DIGITS)}`;
  };
  return facets
    .filter(({ plane, outline }) => outline.length > 0 && dot(plane.n, view.eye) > plane.h)
    .map((facet) => `M${outlinePoints(facet).map(place).join("L")}Z`)
    .join("");
}

export function TierMarks() {
  const selection = useStudio((state) => state.selection);
  const { facets: placed, plan } = useSolved();
  const { facets } = useSolid();
  const view = useStore(eye, (state) => state.view);
  const isHalf = useLook((settings) => settings.against !== "nothing" && settings.layout === "side");
  const svg = useRef<SVGSVGElement>(null);
  const [aspect, setAspect] = useState<number | null>(null);
  useEffect(() => {
    if (!svg.current) return;
    const sizes = new ResizeObserver(([{ contentRect }]) =>
      setAspect(contentRect.width / Math.max(1, contentRect.height)),
    );
    sizes.observe(svg.current);
    return () => sizes.disconnect();
  }, []);
  const isPicked = (k: number) =>
    selection.facetId === null
      ? plan.tiers[placed[k].tierIndex].id === selection.tierId
      : placed[k].id === selection.facetId;
  const picked = selection.tierId === null ? [] : facets.filter((_, k) => isPicked(k));
  const path = aspect === null ? "" : marksPath(picked, viewOf(view, aspect), aspect);
  return (
    <svg
      ref={svg}
      className="tier-marks"
      data-half={isHalf || undefined}
      viewBox="-100 -100 200 200"
      preserveAspectRatio="none"
      aria-hidden="true"
    >
      <path className="tier-mark" d={path} />
      <path className="tier-mark tier-mark-inner" d={path} />
    </svg>
  );
}
