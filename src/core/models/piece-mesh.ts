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
  const rounded = new Float32Array(positions.length);
  for (let i = 0; i < rounded.length; i++) rounded[i] = positions[i] * scale + 0;
  const bits = new Uint32Array(rounded.buffer);
  // open addressing, at most half full: places of vertices (their first coordinate, plus one) by their bits
  const size = 2 ** Math.ceil(Math.log2(Math.max(2, (2 * rounded.length) / 3)));
  const table = new Uint32Array(size);
  /** Takes the vertex in, unless one with its bits is there already. */
  const takesIn = (i: number): boolean => {
    let at =
      Math.imul(bits[i], 0x9e3779b1) ^
      Math.imul(bits[i + 1], 0x85ebca77) ^
      Math.imul(bits[i + 2], 0xc2b2ae3d);
    at = (at ^ (at >>> 15)) & (size - 1);
    for (; table[at] !== 0; at = (at + 1) & (size - 1)) {
      const other = table[at] - 1;
      if (bits[other] === bits[i] && bits[other + 1] === bits[i + 1] && bits[other + 2] === bits[i + 2])
        return false;
    }
    table[at] = i + 1;
    return true;
  };
  for (let i = 0; i < rounded.length; i += 3) {
    if (takesIn(i)) continue;
    // along the longest coordinate, the one whose last bit is the coarsest: it is never zero
    let longest = i;
    for (let k = i + 1; k < i + 3; k++) if (Math.abs(rounded[k]) > Math.abs(rounded[longest])) longest = k;
    do rounded[longest] = stepped(rounded[longest]);
    while (!takesIn(i));
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
