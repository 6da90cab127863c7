/**
 * A piece ready to be traced: flat arrays on the unit sphere, the same layout that a shader gets. Built once, never changed.
 */
import type { Plane } from "../geometry/plane.ts";
import type { Vec3 } from "../geometry/vec.ts";
import type { Piece } from "../plan/document.ts";
import type { SolvedPlan } from "../plan/solved.ts";
import { tintByChannel } from "./casing.ts";
import { ROUGHNESS } from "./finish.ts";
import {
  absorptionAt,
  type Dispersion,
  indexAt,
  LINE_D_NM,
  type OpticalGlass,
  opticalGlass,
} from "./glasses.ts";
import { packDesigns, type SceneDesign } from "./inside.ts";
import { inUnits, type Light } from "./lights.ts";
import type { Rasters } from "./raster.ts";
import { footOfRing } from "./ring.ts";
import { type Seeds, seedsOf } from "./seeds.ts";
import type { Rgb, Stratum } from "./spectrum.ts";
import { STRATA, strata, wavelengthIn } from "./spectrum.ts";
import { lightOver, makeTabletop, type Table, type Tabletop, tableFrame } from "./tabletop.ts";
import { type Casing, casingsOf, tintByStratum } from "./tint-spectrum.ts";
import { type Waviness, wavinessOf } from "./waviness.ts";

export interface Scene {
  readonly planeCount: number;
  /** Four numbers a plane: outward unit normal, distance h from the centre. */
  readonly planes: Float64Array;
  /** GGX roughness of each plane, 0 = smooth. The natural skin is always smooth. */
  readonly roughness: Float64Array;
  /** Rough facets carry a film of water. */
  readonly wet: boolean;
  readonly dispersion: Dispersion;
  readonly nd: number;
  readonly strata: readonly Stratum[];
  /** Absorption per unit-sphere length, one a stratum, and for the three channels when there is no dispersion. */
  readonly sigma: Float64Array;
  readonly sigmaRgb: Rgb;
  /** Layers of glass of another colour, from the outermost in. */
  readonly casings: readonly Casing[];
  /** Of the natural skin; null where it is round. */
  readonly waviness: Waviness | null;
  /** To which the edges between faces are rounded; 0 where they are sharp. See `edges.ts`. */
  readonly edgeRadius: number;
  /** Tiny bubbles all through the glass; null without. */
  readonly seeds: Seeds | null;
  readonly designs: readonly SceneDesign[];
  readonly light: Light;
  /** Millimetres in a unit. */
  readonly radiusMm: number;
  /** The table that the piece lies on; null where nothing but the piece and the light is there. */
  readonly tabletop: Tabletop | null;
}

/** Absorption per mm in each stratum: the glass itself at the stratum's middle, plus a tint picked at a thickness. */
function absorptionByStratum(glass: OpticalGlass, tint: Piece["tint"]): number[] {
  const added = tintByStratum(tint);
  return strata().map((s, j) => absorptionAt(glass, wavelengthIn(s, 0.5)) + added[j]);
}

/** The same for three channels that pass independently: the glass's spectrum as each channel weighs it, the tint by its own RGB. */
function absorptionByChannel(glass: OpticalGlass, tint: Piece["tint"]): Rgb {
  const added = tintByChannel(tint);
  const channel = (c: number): number => {
    const own =
      strata().reduce((sum, s) => sum + s.weight[c] * absorptionAt(glass, wavelengthIn(s, 0.5)), 0) / STRATA;
    return Math.max(0, own) + added[c];
  };
  return [channel(0), channel(1), channel(2)];
}

export interface SceneParts {
  readonly piece: Piece;
  readonly planes: readonly Plane[];
  /** GGX roughness a plane; missing = all smooth. */
  readonly roughness?: readonly number[];
  readonly glass?: OpticalGlass;
  readonly wet?: boolean;
  /** Radius to which edges are rounded, mm; missing = sharp. */
  readonly edgeMm?: number;
  readonly light: Light;
  /** Pixels of the inside's pictures; without them they aren't there. */
  readonly rasters?: Rasters;
}

/** Packs planes on the unit sphere, a glass and what is inside. */
export function makeScene(parts: SceneParts): Scene {
  const { piece, planes, light } = parts;
  const glass = parts.glass ?? opticalGlass(piece.glass);
  const nd = indexAt(glass.dispersion, LINE_D_NM);
  const radiusMm = piece.diameterMm / 2;
  const packed = new Float64Array(4 * planes.length);
  planes.forEach((p, i) => {
    packed.set([p.n[0], p.n[1], p.n[2], p.h], 4 * i);
  });
  const sigmaRgb = absorptionByChannel(glass, piece.tint);
  return {
    planeCount: planes.length,
    planes: packed,
    roughness: Float64Array.from(planes, (_, i) => parts.roughness?.[i] ?? 0),
    wet: parts.wet ?? false,
    dispersion: glass.dispersion,
    nd,
    strata: strata(),
    sigma: Float64Array.from(absorptionByStratum(glass, piece.tint), (a) => a * radiusMm),
    sigmaRgb: [sigmaRgb[0] * radiusMm, sigmaRgb[1] * radiusMm, sigmaRgb[2] * radiusMm],
    casings: casingsOf(piece),
    waviness: wavinessOf(piece),
    edgeRadius: (parts.edgeMm ?? 0) / radiusMm,
    seeds: seedsOf(piece),
    designs: packDesigns(piece, nd, parts.rasters ?? new Map()),
    light: inUnits(light, radiusMm),
    radiusMm,
    tabletop: null,
  };
}

/**
 * The scene on a table, under its light as it stands over that.
 * @param floor the piece's least height along `up`, unit sphere
 * @param hasRing the piece lies on a small ring on the table
 */
export function putOnTable(scene: Scene, up: Vec3, floor: number, table: Table, hasRing = false): Scene {
  const light = lightOver(scene.light, up, table.material.rgb);
  const height = hasRing ? footOfRing(scene, tableFrame(up), floor) : floor;
  return { ...scene, light, tabletop: makeTabletop(up, height, table, light, hasRing) };
}

/**
 * The scene of a solved plan: every facet with its tier's finish.
 * @param rasters pixels of the plan's pictures
 * @param edgeMm to which edges are rounded; without it they are sharp, as what is held against other tracers has to be
 */
export function sceneOfPlan(
  solved: SolvedPlan,
  light: Light,
  wet = false,
  rasters?: Rasters,
  edgeMm = 0,
): Scene {
  const { piece, tiers } = solved.plan;
  const roughness = solved.facets.map((f) => ROUGHNESS[tiers[f.tierIndex].finish ?? "polished"]);
  return makeScene({
    piece,
    planes: solved.planes,
    roughness,
    wet,
    edgeMm,
    light,
    rasters,
  });
}
