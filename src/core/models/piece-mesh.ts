/**
 * The cut piece as a closed mesh for model files: single-precision vertices, each standing once, so that a reader who
 * joins vertices by their bits finds every edge shared by exactly two triangles.
 */

import { NothingLeft } from "../geometry/broken-mesh.ts";
import { meshVolume } from "../geometry/mesh.ts";
import { checkClosed, checkOnSurface, checkVolume } from "../geometry/mesh-check.ts";
import { meshOf } from "../geometry/mesh-cut.ts";
import { segmentsFor } from "../geometry/mesh-points.ts";
import { cutBall } from "../geometry/solid.ts";
import type { Solid } from "../geometry/solid-types.ts";
import type { SolvedPlan } from "../plan/solved.ts";

/** How far the mesh may stand off the true skin, mm: round to the eye and below what a fine 3D printer resolves. */
const CHORD_ERROR_MM = 0.008;

export interface PieceMesh {
  /** Three coordinates a vertex, in the unit asked for. */
  readonly positions: Float32Array;
  /** Three a vertex: outward unit normal of the skin; meaningless where only facets meet. */
  readonly skinNormals: Float32Array;
  readonly triangles: Uint32Array;
  /** Position of each triangle's facet in the solved plan, SKIN for natural skin; ascending. */
  readonly facets: Int32Array;
}

/** The next single-precision number away from zero. */
function stepped(x: number): number {
  const bits = new Uint32Array(Float32Array.of(x).buffer);
  bits[0] += 1;
  return new Float32Array(bits.buffer)[0];
}

/**
 * Rounds to single precision so that no two vertices get the same bits: a reader that joins by bits then finds the very
 * same surface. One that would fall on another is set by the last bit beside it, as often as it takes: less than the
 * rounding of single precision itself moves it.
 */
function roundedApart(positions: Float64Array, scale: number): Float32Array {
  // adding 0 makes -0 the same bits as 0
  const rounded = Float32Array.from(positions, (x) => x * scale + 0);
  const taken = new Set<string>();
  for (let i = 0; i < rounded.length; i += 3) {
    const key = (): string => `${rounded[i]},${rounded[i + 1]},${rounded[i + 2]}`;
    // along the longest coordinate, the one whose last bit is the coarsest: it is never zero
    const sizes = [0, 1, 2].map((k) => Math.abs(rounded[i + k]));
    const longest = i + sizes.indexOf(Math.max(...sizes));
    while (taken.has(key())) rounded[longest] = stepped(rounded[longest]);
    taken.add(key());
  }
  return rounded;
}

/**
 * How far a sound mesh's volume may be from the exact one, radii cubed: the skin's chords and those of the facets' circles
 * stand off by the chord error, and each corner by the rounding of single precision.
 */
function volumeError({ skinArea, facetArea }: Solid, chordError: number): number {
  return skinArea * chordError + (skinArea + facetArea) * SINGLE_PRECISION;
}
const SINGLE_PRECISION = 2 ** -22;

/**
 * @param unitMm millimetres in the unit of the positions: 1 for millimetres, 1000 for metres
 * @throws NothingLeft when the plan leaves nothing of the piece
 * @throws BrokenMesh when the mesh is not sound, so that no broken model is ever written
 */
export function pieceMesh({ planes, radiusMm }: SolvedPlan, unitMm: number): PieceMesh {
  const solid = cutBall(planes);
  if (solid.vanished) throw new NothingLeft("nothing-left");
  const chordError = CHORD_ERROR_MM / radiusMm;
  const mesh = meshOf(solid, segmentsFor(chordError));
  const scale = radiusMm / unitMm;
  const positions = roundedApart(mesh.positions, scale);
  checkClosed(mesh);
  const asWritten = { ...mesh, positions: Float64Array.from(positions, (x) => x / scale) };
  checkOnSurface(asWritten, planes, 2 * SINGLE_PRECISION);
  const volume = meshVolume({ positions, triangles: mesh.triangles }) / scale ** 3;
  checkVolume(volume, solid.volume, volumeError(solid, chordError));
  return {
    positions,
    skinNormals: Float32Array.from(mesh.skinNormals),
    triangles: mesh.triangles,
    facets: mesh.trianglePlanes,
  };
}
