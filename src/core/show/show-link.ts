/**
 * A customer's page as a link for a hosted app: `#show=1.` and the piece as planes, compressed as plans are. As in the page, nothing
 * says how it is cut: planes stand in an order of their own, and neither rig nor tier nor price list goes along. The table that it
 * lies on does, by its material's name; a link without one, as all once were, is of a piece in the hand. Pictures and marks are too
 * long for an address and stay behind.
 */
import { NothingLeft } from "../geometry/broken-mesh.ts";
import type { Plane } from "../geometry/plane.ts";
import { cutBall } from "../geometry/solid.ts";
import type { Vec3 } from "../geometry/vec.ts";
import { EDGE_MM } from "../optics/edges.ts";
import { ROUGHNESS } from "../optics/finish.ts";
import { LIGHT_SETTINGS, type LightName } from "../optics/light-settings.ts";
import { MATERIALS, type MaterialName } from "../optics/materials.ts";
import { makeScene } from "../optics/scene.ts";
import type { Finish, Piece, Plan } from "../plan/document.ts";
import { PlanFileError, planFromData } from "../plan/file.ts";
import { COUNTS, TEXT } from "../plan/limits.ts";
import { LONGEST_LINK, packedText, unpackedText } from "../plan/link.ts";
import { wrapDeg } from "../plan/place.ts";
import type { SolvedPlan } from "../plan/solved.ts";
import { type Laid, pieceOfScene, type ShowPiece } from "./show-piece.ts";

const MARK = "show=";
const FORM = "1";
/** Digits after the point of normals and distances: a millionth of the radius. */
const DIGITS = 6;
/** What rounding to so many digits leaves of a unit vector's length. */
const UNIT = 1e-4;
const PER_PLANE = 5;
const FINISHES: readonly Finish[] = ["polished", "prepolished", "ground"];

export interface ShownTexts {
  readonly caption: string;
  readonly price: string;
  readonly light: LightName;
  /** Missing: it is held in the hand. */
  readonly table?: Laid;
}

export interface ShownLink extends ShownTexts {
  /** Name, piece and maker; no tiers. */
  readonly plan: Plan;
  readonly planes: readonly Plane[];
  readonly piece: ShowPiece;
}

/** The piece without the ink mark that its inside is turned by: each design takes that turn over. */
function unmarked({ dop: _dop, inkMarkDeg = 0, inside, ...glass }: Piece): Piece {
  if (!inside) return glass;
  return {
    ...glass,
    inside: inside.map((design) => ({ ...design, turnDeg: wrapDeg(inkMarkDeg + (design.turnDeg ?? 0)) })),
  };
}

/** The same plan with nothing of how it is cut. */
function bareOf({ format, version, name, piece, maker }: Plan): Plan {
  const bare: Plan = { format, version, name, piece: unmarked(piece), rig: { wheelStops: null }, tiers: [] };
  return maker?.name ? { ...bare, maker: { name: maker.name } } : bare;
}

const rounded = (x: number): number => Number(x.toFixed(DIGITS)) + 0;

/**
 * Without the `#`.
 * @throws NothingLeft; PlanFileError when it would be longer than a link can be
 */
export function showFragment(solved: SolvedPlan, { table, ...texts }: ShownTexts): string {
  const { plan, planes, facets } = solved;
  const solid = cutBall(planes);
  if (solid.vanished) throw new NothingLeft("nothing-left");
  const rows = planes.flatMap(({ n, h }, k) => {
    if (solid.facets[k].swallowed) return [];
    const finish = FINISHES.indexOf(plan.tiers[facets[k].tierIndex].finish ?? "polished");
    return [[...n, h].map(rounded).concat(finish)];
  });
  rows.sort((a, b) => a[2] - b[2] || a[0] - b[0] || a[1] - b[1]);
  const laid = table && { ...table, up: table.up.map(rounded), floor: rounded(table.floor) };
  const data = { ...texts, ...(laid && { table: laid }), plan: bareOf(plan), planes: rows.flat() };
  const text = packedText(JSON.stringify(data));
  if (text.length > LONGEST_LINK)
    throw new PlanFileError({
      code: "plan-too-long-for-link",
      data: { characters: text.length, most: LONGEST_LINK },
    });
  return `${MARK}${FORM}.${text}`;
}

const damaged = () => new PlanFileError({ code: "link-damaged", data: {} });

const textIn = (value: unknown): string => {
  if (typeof value !== "string" || value.length > TEXT.name) throw damaged();
  return value;
};

interface Row extends Plane {
  readonly finish: Finish;
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** A unit vector again. @throws PlanFileError for what is none */
function unitIn(value: unknown): Vec3 {
  if (!Array.isArray(value) || value.length !== 3 || !value.every(Number.isFinite)) throw damaged();
  const [x, y, z]: readonly number[] = value;
  const length = Math.hypot(x, y, z);
  if (Math.abs(length - 1) > UNIT) throw damaged();
  return [x / length, y / length, z / length];
}

function tableIn(value: unknown): Laid | undefined {
  if (value === undefined) return undefined;
  if (!isObject(value)) throw damaged();
  const { material, floor, onRing } = value;
  const isMaterial = typeof material === "string" && Object.hasOwn(MATERIALS, material);
  // least height of what is left of a ball of 1
  const isFloor = typeof floor === "number" && floor >= -1 && floor < 1;
  if (!isMaterial || !isFloor || typeof onRing !== "boolean") throw damaged();
  return { material: material as MaterialName, up: unitIn(value.up), floor, onRing };
}

function rowsIn(value: unknown): readonly Row[] {
  const most = COUNTS.facets * PER_PLANE;
  if (!Array.isArray(value) || value.length > most || value.length % PER_PLANE !== 0) throw damaged();
  if (!value.every((x) => typeof x === "number" && Number.isFinite(x))) throw damaged();
  return Array.from({ length: value.length / PER_PLANE }, (_, k): Row => {
    const [x, y, z, h, finish] = value.slice(PER_PLANE * k, PER_PLANE * k + PER_PLANE);
    if (Math.abs(h) >= 1 || !(finish in FINISHES)) throw damaged();
    return { n: unitIn([x, y, z]), h, finish: FINISHES[finish] };
  });
}

function objectIn(text: string): Readonly<Record<string, unknown>> {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    throw damaged();
  }
  if (!isObject(data)) throw damaged();
  return data;
}

/** @param fragment with or without its # @throws PlanFileError for what can't be read */
export function shownInFragment(fragment: string): ShownLink {
  const [form, packed = ""] = fragment.replace(/^#/, "").slice(MARK.length).split(".", 2);
  if (form !== FORM) throw new PlanFileError({ code: "link-newer", data: {} });
  const data = objectIn(unpackedText(packed));
  const { plan } = planFromData(data.plan);
  const rows = rowsIn(data.planes);
  const light = textIn(data.light);
  if (!Object.hasOwn(LIGHT_SETTINGS, light)) throw damaged();
  const table = tableIn(data.table);
  const scene = makeScene({
    piece: plan.piece,
    planes: rows,
    roughness: rows.map(({ finish }) => ROUGHNESS[finish]),
    edgeMm: EDGE_MM,
    light: { kind: "uniform" },
  });
  return {
    plan,
    planes: rows,
    caption: textIn(data.caption),
    price: textIn(data.price),
    light: light as LightName,
    ...(table && { table }),
    piece: pieceOfScene(
      scene,
      rows.map(() => true),
    ),
  };
}
