/** A small drawing of a plan as a data URL, kept with it in the library. Drawn from the exact outlines, same in both themes. */
import type { Solid } from "../../core/geometry/solid-types.ts";
import type { Plan } from "../../core/plan/document.ts";
import { solid } from "../../state/derived.ts";
import { HOME, type Orbit } from "../piece/camera.ts";
import { drawPiece, pointsOf } from "../piece/drawing.ts";

/** The ball fills the picture, whose shorter side is wider than it at the distance of HOME. */
const SIZE = 56;
/** Mid-tones that stand on paper and on lamp-lit ground alike. */
const SKIN = "#a9b7b1";
const FACET = "#dfe8e4";
const LINE = "#4a433b";

export const thumbnailOf = (plan: Plan): string => drawingOf(solid(plan), HOME);

/** The drawing of a cut piece from anywhere. */
export function drawingOf(cut: Solid, view: Orbit): string {
  const { silhouette, facets } = drawPiece(cut, view);
  const faces = facets.map(({ ring }) => `<polygon points="${pointsOf(ring, SIZE, 1)}"/>`);
  const svg =
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="-50 -50 100 100"><polygon points="${pointsOf(silhouette, SIZE, 1)}" fill="${SKIN}"/>` +
    `<g fill="${FACET}" stroke="${LINE}" stroke-linejoin="round">${faces.join("")}</g></svg>`;
  return `data:image/svg+xml;base64,${btoa(svg)}`;
}
