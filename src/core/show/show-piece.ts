/**
 * A piece as a customer's page holds it: all that light needs, as plain numbers, and nothing of how it is cut. Facets that nothing is
 * left of are gone, the others stand in an order of their own, so that neither tiers nor the order of cutting can be read off.
 */
import { NothingLeft } from "../geometry/broken-mesh.ts";
import { cutBall } from "../geometry/solid.ts";
import type { Vec3 } from "../geometry/vec.ts";
import { EDGE_MM } from "../optics/edges.ts";
import type { Dispersion } from "../optics/glasses.ts";
import type { Faces, SceneDesign } from "../optics/inside.ts";
import { inUnits, type Light } from "../optics/lights.ts";
import { MATERIALS, type Material, type MaterialName } from "../optics/materials.ts";
import { halved, type Raster, type Rasters } from "../optics/raster.ts";
import { putOnTable, type Scene, sceneOfPlan } from "../optics/scene.ts";
import type { Seeds } from "../optics/seeds.ts";
import { type Rgb, strata } from "../optics/spectrum.ts";
import type { SolvedPlan } from "../plan/solved.ts";

/** A picture inside, its pixels in base64. */
interface ShownPicture {
  readonly width: number;
  readonly height: number;
  readonly rgba: string;
}
type ShownDesign = Omit<SceneDesign, "faces"> & {
  readonly faces: {
    readonly front: ShownPicture | null;
    readonly back: ShownPicture | null | "through";
  } | null;
};

/** Unit sphere, as in the tracer's `Scene`. */
export interface ShowPiece {
  /** Five numbers a plane: outward normal, distance from the centre, roughness. */
  readonly planes: readonly number[];
  readonly dispersion: Dispersion;
  readonly nd: number;
  readonly sigma: readonly number[];
  readonly sigmaRgb: Rgb;
  /** Layers of the glass; left out where there are none. */
  readonly casings?: readonly {
    readonly radius: number;
    readonly sigma: readonly number[];
    readonly sigmaRgb: Rgb;
  }[];
  readonly seeds?: Seeds;
  /** Of the skin; left out where it is round. */
  readonly waviness?: { readonly slope: number; readonly waves: readonly number[] };
  readonly designs: readonly ShownDesign[];
  /** Millimetres in a unit. */
  readonly radiusMm: number;
}

const PER_PLANE = 5;
/** What single precision holds, as the graphics card takes it. */
const short = (x: number): number => Number(x.toPrecision(8)) + 0;

/** Pixels of all pictures inside together: what a page has room for, and fine enough through glass. */
const MOST_PIXELS = 60_000;

function packed(raster: Raster, mostPixels: number): ShownPicture {
  let { width, height, rgba } = raster;
  while (width * height > mostPixels) ({ width, height, rgba } = halved({ width, height, rgba }));
  let text = "";
  for (const byte of rgba) text += String.fromCharCode(byte);
  return { width, height, rgba: btoa(text) };
}

const unpacked = ({ width, height, rgba }: ShownPicture): Raster => ({
  width,
  height,
  rgba: Uint8Array.from(atob(rgba), (c) => c.charCodeAt(0)),
});

/** Both faces by one way of turning pixels into another form. */
const facesBy = <A extends object, B>(
  { front, back }: { readonly front: A | null; readonly back: A | null | "through" },
  turn: (face: A) => B,
): { readonly front: B | null; readonly back: B | null | "through" } => ({
  front: front && turn(front),
  back: back === "through" || back === null ? back : turn(back),
});

function shownDesigns(designs: readonly SceneDesign[]): ShownDesign[] {
  const sides = ({ front, back }: Faces) => [front, back].filter((side) => side && side !== "through").length;
  const count = designs.reduce((sum, { faces }) => sum + (faces ? sides(faces) : 0), 0);
  const pack = (raster: Raster) => packed(raster, MOST_PIXELS / count);
  return designs.map((design) => ({ ...design, faces: design.faces && facesBy(design.faces, pack) }));
}

/** A scene as plain numbers. @param isThere of each plane whether something of its facet is left */
export function pieceOfScene(scene: Scene, isThere: readonly boolean[]): ShowPiece {
  const planes = isThere.flatMap((there, i) =>
    there ? [[...scene.planes.subarray(4 * i, 4 * i + 4), scene.roughness[i]].map(short)] : [],
  );
  planes.sort((a, b) => a[2] - b[2] || a[0] - b[0] || a[1] - b[1]);
  return {
    planes: planes.flat(),
    dispersion: scene.dispersion,
    nd: scene.nd,
    sigma: Array.from(scene.sigma, short),
    sigmaRgb: scene.sigmaRgb,
    ...(scene.casings.length > 0
      ? { casings: scene.casings.map((layer) => ({ ...layer, sigma: Array.from(layer.sigma, short) })) }
      : {}),
    ...(scene.seeds ? { seeds: scene.seeds } : {}),
    ...(scene.waviness
      ? { waviness: { slope: scene.waviness.slope, waves: Array.from(scene.waviness.waves, short) } }
      : {}),
    designs: shownDesigns(scene.designs),
    radiusMm: scene.radiusMm,
  };
}

/**
 * @param rasters pixels of the plan's pictures
 * @throws NothingLeft when the plan leaves nothing of the piece
 */
export function showPiece(solved: SolvedPlan, rasters?: Rasters): ShowPiece {
  const solid = cutBall(solved.planes);
  if (solid.vanished) throw new NothingLeft("nothing-left");
  const scene = sceneOfPlan(solved, { kind: "uniform" }, false, rasters);
  return pieceOfScene(
    scene,
    solid.facets.map(({ swallowed }) => !swallowed),
  );
}

/** On a table a piece has so many times the room around it as in the hand, for its shadow, and lies so far below the middle, radii. */
export const SEEN_ON_TABLE = { room: 1.35, belowMiddle: 0.2 } as const;

/** A table that it lies on, as plain numbers; unit sphere. */
export interface ShownTable {
  readonly material: Material;
  readonly radiusMm: number;
  /** The table's unit normal in the piece. */
  readonly up: Vec3;
  /** The piece's least height along that. */
  readonly floor: number;
  readonly onRing: boolean;
}

/** How a piece lies on a table of ours. */
export interface Laid extends Pick<ShownTable, "up" | "floor" | "onRing"> {
  readonly material: MaterialName;
}

export const shownTable = ({ material, ...laid }: Laid, diameterMm: number): ShownTable => ({
  ...laid,
  material: MATERIALS[material],
  radiusMm: diameterMm / 2,
});

/** The shown piece on its table, if it has one, under the light as that stands there. @param isUncut then the ball lies on it */
export function layDown(scene: Scene, table: ShownTable | undefined, isUncut = false): Scene {
  if (!table) return scene;
  return putOnTable(scene, table.up, isUncut ? -1 : table.floor, table, table.onRing);
}

/** The scene again, under a light. @param isUncut the ball before anything is ground */
export function sceneOfShown(piece: ShowPiece, light: Light, isUncut = false): Scene {
  const { planes, dispersion, nd, sigma, sigmaRgb, casings = [], seeds = null, waviness, designs } = piece;
  const planeCount = isUncut ? 0 : planes.length / PER_PLANE;
  const row = (i: number) => planes.slice(PER_PLANE * i, PER_PLANE * i + PER_PLANE);
  const rows = Array.from({ length: planeCount }, (_, i) => row(i));
  return {
    planeCount,
    planes: Float64Array.from(rows.flatMap((one) => one.slice(0, 4))),
    roughness: Float64Array.from(rows, (one) => one[4]),
    wet: false,
    dispersion,
    nd,
    strata: strata(),
    sigma: Float64Array.from(sigma),
    sigmaRgb,
    casings: casings.map((layer) => ({ ...layer, sigma: Float64Array.from(layer.sigma) })),
    edgeRadius: EDGE_MM / piece.radiusMm,
    seeds,
    waviness: waviness ? { ...waviness, waves: Float64Array.from(waviness.waves) } : null,
    designs: designs.map((design) => ({ ...design, faces: design.faces && facesBy(design.faces, unpacked) })),
    light: inUnits(light, piece.radiusMm),
    radiusMm: piece.radiusMm,
    tabletop: null,
  };
}
