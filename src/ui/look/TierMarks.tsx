/**
 * Which tier is meant, marked on the traced piece: its outlines where they face the eye, doubled as on the drawn piece. Only
 * while its sentence is pointed at, and for a moment after something is picked: what is looked at is the glass.
 */
import { useEffect, useRef, useState } from "react";
import type { SolidFacet } from "../../core/geometry/solid-types.ts";
import { dot, sub, type Vec3 } from "../../core/geometry/vec.ts";
import type { View } from "../../render/view.ts";
import { outlinePoints } from "../piece/outline-points.ts";
import { useEye } from "../piece/viewport.ts";
import { useSolid, useSolved, useStudio } from "../use-studio.ts";
import { useLook } from "./look-settings.ts";
import { viewOf } from "./traced.ts";

/** Digits of a place in the picture, in hundredths of its half: finer than any pixel. */
const DIGITS = 2;

/** SVG path of facets as seen in a picture that reaches from -100 to 100 both ways, y down; those turned away are left out. */
function marksPath(facets: readonly SolidFacet[], view: View, aspect: number): string {
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

/** Long enough to find the facets that were picked. */
const SHOWN_MS = 1600;

/** True for a moment after another thing is picked than the one that was when the picture came up, or until Escape. */
function useIsJustPicked(picked: string): boolean {
  const [shown, setShown] = useState<string | null>(null);
  const before = useRef(picked);
  useEffect(() => {
    if (before.current === picked) return;
    before.current = picked;
    setShown(picked);
    const hide = () => setShown(null);
    const onKey = (event: KeyboardEvent) => event.key === "Escape" && hide();
    const timer = setTimeout(hide, SHOWN_MS);
    window.addEventListener("keydown", onKey, true);
    return () => {
      clearTimeout(timer);
      window.removeEventListener("keydown", onKey, true);
    };
  }, [picked]);
  return shown === picked;
}

export function TierMarks() {
  const chosen = useStudio((state) => state.selection);
  // a sentence that is pointed at; a facet under the hand that turns the piece is no question
  const pointed = useStudio((state) => (state.hover.facetId === null ? state.hover : null));
  const isJustPicked = useIsJustPicked(`${chosen.tierId} ${chosen.facetId}`);
  const isPointed = pointed !== null && pointed.tierId !== null;
  const selection = isPointed ? pointed : chosen;
  const { facets: placed, plan } = useSolved();
  const { facets } = useSolid();
  const view = useEye((orbit) => orbit);
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
      data-shown={isPointed || isJustPicked || undefined}
      viewBox="-100 -100 200 200"
      preserveAspectRatio="none"
      aria-hidden="true"
    >
      <path className="tier-mark" d={path} />
      <path className="tier-mark tier-mark-inner" d={path} />
    </svg>
  );
}
