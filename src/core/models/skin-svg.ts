/**
 * The skin unrolled at true size: what is left round, where facets border it, and the edges between facets seen from the
 * centre. Equal-area cylindrical projection (J. H. Lambert, 1772): R times azimuth across, R times the sine of the elevation
 * up, so every patch has its true area. Seen from outside, front up, azimuth 0 at the left edge.
 */
import { type GeoPermissibleObjects, geoConicEqualArea, geoGraticule, geoPath } from "d3-geo";
import type { Plane } from "../geometry/plane.ts";
import type { SkinPatch, Solid, SolidFacet } from "../geometry/solid-types.ts";
import { addScaled, cross, dot, scale, sub, type Vec3 } from "../geometry/vec.ts";
import type { SolvedPlan } from "../plan/solved.ts";
import { checkBar, HAIRLINE_MM, LINE_MM, MARGIN_MM, mm, svgPage, TEXT_MM, textAt } from "./svg-page.ts";

type LonLat = [number, number];
const DEG = 180 / Math.PI;
/** Arcs of small circles are given to the map at this step, radians; 0.01 mm off on a ball of 100 mm. */
const ARC_STEP = Math.PI / 180;
const GRID_DEG = 30;
const LABELLED_DEG = [0, 90, 180, 270, 360];
/** Normals nearer the axis than this belong to flats at a pole. */
const POLE_SINE = 0.02;
/** Where along the strip names of flats at the poles stand, between two labelled azimuths. */
const POLE_LABEL_AT = 0.375;
/** Width of a letter of a plain sans-serif, as a share of its size (common practice, no source). */
const LETTER_WIDTH = 0.62;
/** Least width of the sheet's inside, mm, for the notes. */
const NOTES_MM = 150;

const lonLat = ([x, y, z]: Vec3): LonLat => [
  Math.atan2(y, x) * DEG,
  Math.asin(Math.max(-1, Math.min(1, z / Math.hypot(x, y, z)))) * DEG,
];

/** Points of a plane's circle from one of its points to another, clockwise about the normal: skin on the left. */
function arcPoints({ n, h }: Plane, from: Vec3, to: Vec3): Vec3[] {
  const centre = scale(n, h);
  const u = sub(from, centre);
  const w = sub(to, centre);
  const v = cross(u, n);
  const turn = Math.atan2(dot(v, w), dot(u, w));
  const isWhole = from[0] === to[0] && from[1] === to[1] && from[2] === to[2];
  const angle = isWhole || turn <= 0 ? turn + 2 * Math.PI : turn;
  const steps = Math.max(1, Math.ceil(angle / ARC_STEP));
  return Array.from({ length: steps + 1 }, (_, i) => {
    const t = (angle * i) / steps;
    return addScaled(addScaled(centre, u, Math.cos(t)), v, Math.sin(t));
  });
}

/** Closed rings of one patch, skin on the left. */
const ringsOf = (patch: SkinPatch, planes: readonly Plane[]): LonLat[][] =>
  patch.loops.map((loop) => {
    const ring = loop.flatMap(({ plane, from, to }) =>
      arcPoints(planes[plane], from, to).slice(0, -1).map(lonLat),
    );
    return [...ring, ring[0]];
  });

/** The map's polygons have their inside on the right. */
const patchShape = (patch: SkinPatch, planes: readonly Plane[]): GeoPermissibleObjects =>
  patch.loops.length === 0
    ? { type: "Sphere" }
    : { type: "Polygon", coordinates: ringsOf(patch, planes).map((ring) => ring.reverse()) };

/** Edges between two facets as seen from the centre, which lies inside both. */
const edgeShape = (solid: Solid): GeoPermissibleObjects => ({
  type: "MultiLineString",
  coordinates: solid.edges
    .filter(({ a, b }) => solid.facets[a].plane.h > 0 && solid.facets[b].plane.h > 0)
    .map(({ from, to }) => [lonLat(from), lonLat(to)]),
});

/** A facet's name where its normal leaves the ball, no wider than the facet; that of a flat at a pole stands outside. */
function facetLabel(id: string, { plane, width }: SolidFacet, R: number): string {
  const [x, y, z] = plane.n;
  const strip = 2 * Math.PI * R;
  if (Math.hypot(x, y) < POLE_SINE) {
    const level = z > 0 ? MARGIN_MM - 1 : MARGIN_MM + 2 * R + LINE_MM;
    return textAt(MARGIN_MM + POLE_LABEL_AT * strip, level, id, `text-anchor="middle"`);
  }
  const turn = Math.atan2(y, x);
  const size = Math.min(TEXT_MM, (width * R) / (LETTER_WIDTH * id.length));
  const half = (LETTER_WIDTH * size * id.length) / 2;
  const across = R * (turn < 0 ? turn + 2 * Math.PI : turn);
  const inFrame = Math.min(strip - half, Math.max(half, across));
  const up = MARGIN_MM + R - R * z + size / 3;
  return textAt(MARGIN_MM + inFrame, up, id, `text-anchor="middle" style="font-size:${mm(size)}px"`);
}

/** The exact map as one SVG document, millimetres. @param solid cut by this plan's planes */
export function skinSvg(solved: SolvedPlan, solid: Solid): string {
  const { plan, radiusMm: R, planes } = solved;
  const [width, height] = [2 * Math.PI * R, 2 * R];
  const projection = geoConicEqualArea()
    .parallels([0, 0])
    .center([0, 0])
    .rotate([-180, 0])
    .scale(R)
    .translate([MARGIN_MM + width / 2, MARGIN_MM + R]);
  const path = geoPath(projection).digits(3);
  const draw = (shape: GeoPermissibleObjects, attributes: string): string =>
    `<path ${attributes} d="${path(shape) ?? ""}"/>`;
  const borders: GeoPermissibleObjects = {
    type: "MultiLineString",
    coordinates: solid.patches.flatMap((patch) => ringsOf(patch, planes)),
  };
  const ink = plan.piece.inkMarkDeg ?? 0;
  const inkX = MARGIN_MM + R * ((((ink % 360) + 360) % 360) / DEG);
  const labels = solved.facets.flatMap(({ id }, i) =>
    solid.facets[i].swallowed ? [] : [facetLabel(id, solid.facets[i], R)],
  );
  const below = MARGIN_MM + height;
  const notes = [
    `${plan.name}: unrolled skin at true size, diameter ${mm(plan.piece.diameterMm)} mm, seen from outside, front up`,
    `Equal-area cylindrical projection: ${mm(R)} mm x azimuth (radians) across, ${mm(R)} mm x sin(elevation) up.`,
    "Areas are true everywhere; lengths only along the equator. Grey: round skin. Thin lines: edges between facets.",
  ];
  return svgPage(
    Math.max(width, NOTES_MM) + 2 * MARGIN_MM,
    below + LINE_MM * (notes.length + 3.5) + MARGIN_MM,
    `${plan.name}: unrolled skin`,
    [
      ...solid.patches.map((patch) =>
        draw(patchShape(patch, planes), `class="skin" fill="#e3e3e3" stroke="none"`),
      ),
      draw(
        geoGraticule()
          .step([GRID_DEG, GRID_DEG])
          .extent([
            [-180, -90],
            [180, 90],
          ])(),
        `stroke="#bbb" stroke-width="${HAIRLINE_MM / 2}"`,
      ),
      draw(edgeShape(solid), `class="edges" stroke-width="${HAIRLINE_MM}"`),
      draw(borders, `class="borders"`),
      `<rect id="frame" x="${MARGIN_MM}" y="${MARGIN_MM}" width="${mm(width)}" height="${mm(height)}"/>`,
      `<path id="ink-mark" stroke-dasharray="2 1" d="M${mm(inkX)} ${MARGIN_MM}v${mm(height)}"/>`,
      textAt(inkX, MARGIN_MM - 1, "ink mark", `text-anchor="middle"`),
      ...labels,
      ...LABELLED_DEG.map((deg) =>
        textAt(MARGIN_MM + (R * deg) / DEG, below + LINE_MM, `${deg}°`, `text-anchor="middle"`),
      ),
      ...notes.map((note, i) => textAt(MARGIN_MM, below + LINE_MM * (i + 2.2), note)),
      checkBar(MARGIN_MM, below + LINE_MM * (notes.length + 2.6)),
    ],
  );
}
