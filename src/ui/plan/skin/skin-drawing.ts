/** Everything that is drawn on the strip, as paths and places in its pixels. Computed from the exact solid alone. */
import { readStop } from "../../../core/bench/rig/set-up.ts";
import type { Report } from "../../../core/check/report.ts";
import { meetingPoint } from "../../../core/geometry/circles.ts";
import type { OutlinePiece, Solid } from "../../../core/geometry/solid-types.ts";
import { scale, type Vec3 } from "../../../core/geometry/vec.ts";
import type { SolvedPlan } from "../../../core/plan/solved.ts";
import { missedCorners } from "../misses.ts";
import { neckOf } from "./neck.ts";
import type { Strip } from "./projection.ts";
import {
  pathData,
  pointOnStrip,
  ringOnStrip,
  type StripPoint,
  type StripRing,
  shiftsToShow,
  strokeOnStrip,
} from "./strip-path.ts";

/** A path and by how many turns it is repeated to show past both borders. */
export interface Drawn {
  readonly key: string;
  readonly path: string;
  readonly shifts: readonly number[];
}
export interface DrawnFacet extends Drawn {
  /** Its outline, to be stroked; `path` is filled. */
  readonly outline: string;
  readonly tierIndex: number;
  readonly stop: string | null;
  /** Middle of the facet, for its number and for fingers that miss it. */
  readonly middle: StripPoint;
  readonly widthPx: number;
}
export interface DrawnGap extends Drawn {
  readonly at: StripPoint;
  readonly mm: number;
  readonly facets: readonly [string, string];
  /** Whether its width is written beside it also when neither facet is chosen: one of several like it. */
  readonly isNamed: boolean;
}
/** Something that meets or misses at one place, with the facets that do. */
export interface Mark {
  readonly key: string;
  readonly at: StripPoint;
  readonly shifts: readonly number[];
  readonly facets: readonly string[];
}
export interface CornerMark extends Mark {
  readonly missMm: number;
}
/** A corner that nearly comes to a point: a tail as long as the miss, enlarged. */
export interface MissMark extends Mark {
  readonly mm: number;
  readonly tail: StripPoint;
}

export interface SkinDrawing {
  readonly facets: readonly DrawnFacet[];
  /** All outlines of facets, and all shared edges, in every turn in which they show: each one path, so that a move changes two. */
  readonly outlines: string;
  readonly edges: string;
  readonly gaps: readonly DrawnGap[];
  readonly touches: readonly Mark[];
  readonly corners: readonly CornerMark[];
  readonly misses: readonly MissMark[];
}

/** How far past both borders the strip is drawn once more, in pixels. */
export interface Window {
  readonly from: number;
  readonly to: number;
}

const NO_NORMAL: Vec3 = [0, 0, 1];
/** Half the height of a number, so that none is cut off at a pole. */
const NUMBER_PX = 10;
/** Numbers of gaps nearer than this would cover each other. */
const NAME_ROOM_PX = 70;

export function drawSkin(
  solved: SolvedPlan,
  solid: Solid,
  report: Report,
  strip: Strip,
  window: Window,
): SkinDrawing {
  const at = positions(solved);
  const { radiusMm } = solved;
  const shiftsOf = (ring: readonly StripPoint[]) => shiftsToShow(strip, ring, window.from, window.to);
  const everyTurn = (points: readonly StripPoint[], isClosed: boolean): string =>
    shiftsOf(points)
      .map((turn) => pathData(points, isClosed, turn * strip.width))
      .join("");
  const rings = solid.facets.map(({ outline, plane }) => ringOnStrip(strip, outline, plane.n));
  // The same facets may meet at two places: their marks are told apart by which comes first. Where they lie is no part of
  // a mark's name, so that it stays the same mark while the hand moves it.
  const times = new Map<string, number>();
  const mark = (kind: string, v: Vec3, facets: readonly string[]): Mark => {
    const at = pointOnStrip(strip, v);
    const name = `${kind} ${facets.join(" ")}`;
    const time = (times.get(name) ?? 0) + 1;
    times.set(name, time);
    return { key: time === 1 ? name : `${name} ${time}`, at, shifts: shiftsOf([at]), facets };
  };
  return {
    facets: rings.flatMap((ring, i) => drawFacet(solved, solid, i, ring, strip, shiftsOf)),
    outlines: rings.map(({ outline, isOutlineClosed }) => everyTurn(outline, isOutlineClosed)).join(""),
    edges: solid.edges
      .map(({ b, from, to, length }) => {
        const line: OutlinePiece = { kind: "line", from, to, with: b, length };
        return everyTurn(strokeOnStrip(strip, line, NO_NORMAL), false);
      })
      .join(""),
    gaps: drawGaps(solved, report, strip, at, shiftsOf),
    touches: report.pairs
      .filter((p) => p.state === "touch")
      .map((p) => mark("touch", meetingPoint(solved.planes[at(p.a)], solved.planes[at(p.b)]), [p.a, p.b])),
    corners: report.corners.map((c) => ({
      ...mark("corner", scale(c.at, 1 / radiusMm), c.facets),
      missMm: c.missMm,
    })),
    misses: missedCorners(solved, solid).map((miss) => {
      const from = mark(
        "miss",
        miss.at,
        miss.facets.map((i) => solved.facets[i].id),
      );
      const tail = pointOnStrip(strip, miss.tail);
      // The tail's end may lie across the seam: it is drawn on its own corner's side.
      const turn = Math.round((from.at[0] - tail[0]) / strip.width);
      return { ...from, mm: miss.mm, tail: [tail[0] + turn * strip.width, tail[1]] as const };
    }),
  };
}

/** Position of a facet in the solid by its id. */
function positions(solved: SolvedPlan): (id: string) => number {
  const known = new Map(solved.facets.map((f, i) => [f.id, i]));
  return (id) => known.get(id) ?? 0;
}

function drawFacet(
  solved: SolvedPlan,
  solid: Solid,
  i: number,
  ring: StripRing,
  strip: Strip,
  shiftsOf: (ring: readonly StripPoint[]) => number[],
): DrawnFacet[] {
  const placed = solved.facets[i];
  if (ring.points.length === 0) return [];
  const xs = ring.points.map((p) => p[0]);
  const [low, high] = [Math.min(...xs), Math.max(...xs)];
  const outline = pathData(ring.outline, ring.isOutlineClosed);
  const [, y] = pointOnStrip(strip, solid.facets[i].centroid);
  return [
    {
      key: placed.id,
      path: ring.points === ring.outline ? outline : pathData(ring.points, true),
      outline,
      shifts: shiftsOf(ring.points),
      tierIndex: placed.tierIndex,
      stop: placed.wheelStop === null ? null : readStop(solved.plan, placed).label,
      middle: [(low + high) / 2, Math.min(strip.height - NUMBER_PX, Math.max(NUMBER_PX, y))],
      widthPx: high - low,
    },
  ];
}

/** Gaps between facets of one tier and across tiers, wherever round skin lies between them. */
function drawGaps(
  solved: SolvedPlan,
  report: Report,
  strip: Strip,
  at: (id: string) => number,
  shiftsOf: (ring: readonly StripPoint[]) => number[],
): DrawnGap[] {
  const named = new Set<string>();
  const places: StripPoint[] = [];
  return report.pairs.flatMap((pair): DrawnGap[] => {
    if (pair.state !== "gap" || pair.gapMm <= 0) return [];
    const [a, b] = [at(pair.a), at(pair.b)];
    const band = neckOf(solved.planes[a], solved.planes[b]);
    // A band is the ring itself, whichever way it runs.
    const ring = ringOnStrip(strip, band, solved.planes[a].n).outline;
    if (ring.length === 0) return [];
    const alike = `${solved.facets[a].tierIndex} ${solved.facets[b].tierIndex} ${pair.gapMm.toFixed(1)}`;
    const place = pointOnStrip(strip, meetingPoint(solved.planes[a], solved.planes[b]));
    // The number stands at one gap of each kind, away from the borders.
    const isClear = places.every((p) => Math.hypot(p[0] - place[0], p[1] - place[1]) > NAME_ROOM_PX);
    const isNamed =
      !named.has(alike) && isClear && place[0] > strip.width * 0.1 && place[0] < strip.width * 0.9;
    if (isNamed) {
      named.add(alike);
      places.push(place);
    }
    return [
      {
        key: `gap ${pair.a} ${pair.b}`,
        path: pathData(ring, true),
        shifts: shiftsOf(ring),
        at: place,
        mm: pair.gapMm,
        facets: [pair.a, pair.b],
        isNamed,
      },
    ];
  });
}
