/** A small drawing of a plan as a data URL, kept with it in the library. Drawn from the exact outlines, same in both themes. */
import { dot, type Vec3 } from "../../core/geometry/vec.ts";
import type { Plan } from "../../core/plan/document.ts";
import { solid } from "../../state/derived.ts";
import { eyeFrame, HOME } from "../piece/camera.ts";
import { outlinePoints } from "../piece/outline-points.ts";

const RADIUS = 46;
const COARSE_RAD = 0.12;
/** Mid-tones that stand on paper and on lamp-lit ground alike. */
const SKIN = "#a9b7b1";
const FACET = "#dfe8e4";
const LINE = "#4a433b";

export function thumbnailOf(plan: Plan): string {
  const { out, right, up } = eyeFrame(HOME);
  const place = (p: Vec3) => `${(dot(p, right) * RADIUS).toFixed(1)},${(-dot(p, up) * RADIUS).toFixed(1)}`;
  const faces = solid(plan)
    .facets.filter((facet) => !facet.swallowed && dot(facet.plane.n, out) > 0)
    .map((facet) => `<polygon points="${outlinePoints(facet, COARSE_RAD).map(place).join(" ")}"/>`);
  const svg =
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="-50 -50 100 100"><circle r="${RADIUS}" fill="${SKIN}"/>` +
    `<g fill="${FACET}" stroke="${LINE}" stroke-linejoin="round">${faces.join("")}</g></svg>`;
  return `data:image/svg+xml;base64,${btoa(svg)}`;
}
