/**
 * Facet outlines at true size, each in its own plane: across to the right, meridian up, arcs as true arcs. Facets of one
 * tier that are alike are drawn once. Made to lay a finished facet on, or to cut a paper gauge from.
 */
import type { OutlinePiece, Solid, SolidFacet } from "../geometry/solid-types.ts";
import { dot, scale, sub, type Vec3 } from "../geometry/vec.ts";
import type { SolvedPlan } from "../plan/solved.ts";
import { checkBar, LINE_MM, MARGIN_MM, mm, svgPage, textAt } from "./svg-page.ts";

/** Width within the margins of an upright A4 sheet (ISO 216), mm. */
const SHEET_MM = 210 - 2 * MARGIN_MM;
/** Between two drawings, and the least room for a drawing's words, mm. */
const GUTTER_MM = 6;
const WORDS_MM = 42;
/** Outlines whose pieces differ by less than this are drawn as one, mm: a tenth of what a printed line is wide. */
const ALIKE_MM = 0.01;

/** A point of the facet's plane in its frame, mm, y up. */
const flat = ({ plane, frame }: SolidFacet, p: Vec3, R: number): [number, number] => {
  const d = sub(p, scale(plane.n, plane.h));
  return [R * dot(d, frame.across), R * dot(d, frame.meridian)];
};

/** Path of one outline about (x, y), y down as SVG has it. */
function outlinePath(facet: SolidFacet, R: number, x: number, y: number): string {
  const radius = Math.sqrt(Math.max(0, 1 - facet.plane.h ** 2));
  const at = (p: Vec3): string => {
    const [across, up] = flat(facet, p, R);
    return `${mm(x + across)} ${mm(y - up)}`;
  };
  const opposite = (p: Vec3): Vec3 => sub(scale(facet.plane.n, 2 * facet.plane.h), p);
  const arc = (piece: OutlinePiece): string => {
    const r = mm(radius * R);
    const turn = piece.length / radius;
    // a whole circle has no end of its own, so it is drawn as two halves
    const isWhole = piece.from.every((c, k) => c === piece.to[k]);
    if (isWhole) return `A${r} ${r} 0 0 0 ${at(opposite(piece.from))}A${r} ${r} 0 0 0 ${at(piece.to)}`;
    return `A${r} ${r} 0 ${turn > Math.PI ? 1 : 0} 0 ${at(piece.to)}`;
  };
  const steps = facet.outline.map((piece) => (piece.kind === "arc" ? arc(piece) : `L${at(piece.to)}`));
  return `M${at(facet.outline[0].from)}${steps.join("")}Z`;
}

/** Says of an outline what two alike ones share, from whichever piece it begins. */
function likeness(facet: SolidFacet, R: number): string {
  const pieces = facet.outline.map(({ kind, length }) => `${kind}${Math.round((length * R) / ALIKE_MM)}`);
  const turned = pieces.map((_, i) => [...pieces.slice(i), ...pieces.slice(0, i)].join(" "));
  return turned.sort()[0];
}

interface Group {
  readonly facet: SolidFacet;
  readonly ids: string[];
}

/** Facets that are left, grouped by tier and likeness, in plan order. */
function groupsOf(solved: SolvedPlan, solid: Solid): Group[] {
  const groups = new Map<string, Group>();
  solved.facets.forEach(({ id, tierIndex }, i) => {
    const facet = solid.facets[i];
    if (facet.swallowed) return;
    const key = `${tierIndex} ${likeness(facet, solved.radiusMm)}`;
    const group = groups.get(key);
    if (group) group.ids.push(id);
    else groups.set(key, { facet, ids: [id] });
  });
  return [...groups.values()];
}

const namesOf = (ids: readonly string[]): string =>
  ids.length === 1 ? ids[0] : `${ids[0]} and ${ids.length - 1} alike`;

/** Extent of an outline in its frame, mm: corners and the circle's reach where arcs stand. */
function boxOf(facet: SolidFacet, R: number): { left: number; up: number } {
  const corners = facet.outline.map((piece) => flat(facet, piece.from, R));
  const radius = R * Math.sqrt(Math.max(0, 1 - facet.plane.h ** 2));
  const hasArc = facet.outline.some((piece) => piece.kind === "arc");
  return {
    left: hasArc ? radius : Math.max(...corners.map(([x]) => -x)),
    up: hasArc ? radius : Math.max(...corners.map(([, y]) => y)),
  };
}

/** All outlines of the piece as one SVG document, millimetres. @param solid cut by this plan's planes */
export function outlinesSvg(solved: SolvedPlan, solid: Solid): string {
  const { plan, radiusMm: R } = solved;
  const title = `${plan.name}: facet outlines at true size`;
  const body: string[] = [textAt(MARGIN_MM, MARGIN_MM, title), checkBar(MARGIN_MM, MARGIN_MM + LINE_MM)];
  let [x, y, rowHeight, right] = [MARGIN_MM, MARGIN_MM + 3 * LINE_MM, 0, SHEET_MM];
  for (const { facet, ids } of groupsOf(solved, solid)) {
    const { left, up } = boxOf(facet, R);
    const [width, height] = [facet.width * R, facet.height * R];
    const room = Math.max(2 * left, width, WORDS_MM);
    if (x > MARGIN_MM && x + room > MARGIN_MM + SHEET_MM) {
      [x, y, rowHeight] = [MARGIN_MM, y + rowHeight + GUTTER_MM, 0];
    }
    body.push(`<path class="outline" d="${outlinePath(facet, R, x + left, y + up)}"/>`);
    const words = y + Math.max(2 * up, height) + LINE_MM;
    body.push(textAt(x, words, namesOf(ids)));
    body.push(textAt(x, words + LINE_MM, `${width.toFixed(2)} mm across, ${height.toFixed(2)} mm high`));
    rowHeight = Math.max(rowHeight, words + LINE_MM - y);
    right = Math.max(right, x + room - MARGIN_MM);
    x += room + GUTTER_MM;
  }
  return svgPage(right + 2 * MARGIN_MM, y + rowHeight + MARGIN_MM, title, body);
}
