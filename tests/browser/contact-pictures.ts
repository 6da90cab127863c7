/** The ten product pictures of the contact sheet: pieces, how they lie, tables and lights as a maker would choose them. */

import { supportOf } from "../../src/core/check/size.ts";
import { cutBall } from "../../src/core/geometry/solid.ts";
import { addScaled, normalize, scale, type Vec3 } from "../../src/core/geometry/vec.ts";
import { cameraTowards, lensOf } from "../../src/core/optics/camera.ts";
import { EDGE_MM } from "../../src/core/optics/edges.ts";
import { LIGHT_SETTINGS, type LightName } from "../../src/core/optics/light-settings.ts";
import { MATERIALS, type MaterialName } from "../../src/core/optics/materials.ts";
import { RESTS } from "../../src/core/optics/rest.ts";
import { putOnTable, type Scene, sceneOfPlan } from "../../src/core/optics/scene.ts";
import { tableFrame } from "../../src/core/optics/tabletop.ts";
import type { Piece, Plan } from "../../src/core/plan/document.ts";
import { solvePlan } from "../../src/core/plan/solve.ts";
import type { View } from "../../src/render/view.ts";
import { EXAMPLES } from "../../src/ui/examples.ts";

export interface ContactPicture {
  readonly name: string;
  readonly plan: Plan;
  readonly light: LightName;
  readonly lightTurnDeg: number;
  readonly table: MaterialName;
  /** Unit direction in the piece that lies on the table. */
  readonly down: Vec3;
  readonly onRing: boolean;
  /** How far round from where the light's front is the camera stands, and how far above the table, degrees. */
  readonly round: number;
  readonly above: number;
  /** Stops. */
  readonly exposure: number;
  /** Height of the picture at the piece, in diameters of the uncut ball, and how far the piece stands from its middle, radii. */
  readonly frame: number;
  readonly aside: readonly [number, number];
}

const BACK: Vec3 = [0, 0, -1];
const SIDE: Vec3 = [0, -1, 0];

const named = (name: string): Plan => {
  const plan = EXAMPLES.find((example) => example.name === name);
  if (!plan) throw new Error(`no example is called ${name}`);
  return plan;
};

const withPiece = (name: string, change: Partial<Piece>): Plan => {
  const plan = named(name);
  return { ...plan, piece: { ...plan.piece, ...change } };
};

/** Cobalt swirl of a ribbon, a dark core, a smoke-coloured body: what has to look right besides clear glass. */
const DARK_CORE: Piece["inside"] = [
  { kind: "core", diameterMm: 14, rgb: [0.012, 0.014, 0.03], opaque: true, atMm: [0, 0, -3] },
];

const picture = (
  name: string,
  plan: Plan,
  light: LightName,
  table: MaterialName,
  down: Vec3,
  [round, above]: readonly [number, number],
  rest: Partial<ContactPicture> = {},
): ContactPicture => ({
  name,
  plan,
  light,
  table,
  down,
  onRing: false,
  round,
  above,
  lightTurnDeg: 0,
  exposure: 0,
  frame: 1.6,
  aside: [0, -0.25],
  ...rest,
});

export const CONTACT_PICTURES: readonly ContactPicture[] = [
  // black cards on both sides draw clear glass its edges on white
  picture("clear steps on paper", named("Three steps up"), "soft-box", "paper", BACK, [4, 15], {
    frame: 1.5,
    aside: [0.05, -0.3],
  }),
  picture("ribbon on linen", named("Both banks"), "north-window", "linen", BACK, [-20, 32], {
    frame: 1.3,
    aside: [-0.1, -0.1],
  }),
  picture(
    "dark core on slate",
    withPiece("Three steps up", { inside: DARK_CORE }),
    "north-window",
    "slate",
    BACK,
    [30, 20],
    { exposure: 0.4, frame: 1.9, aside: [0.35, -0.4] },
  ),
  picture("dew on oak", named("Dew on a dome"), "north-window", "oak", BACK, [10, 38], {
    frame: 1.75,
    aside: [-0.3, -0.1],
  }),
  picture("coffer on linen", named("Coffer"), "north-window", "linen", BACK, [38, 24], {
    lightTurnDeg: 50,
    frame: 1.5,
    aside: [0.1, -0.2],
  }),
  picture("skylight under spots", named("Skylight"), "showroom-spots", "slate", BACK, [20, 26], {
    frame: 1.6,
    aside: [0.15, -0.3],
  }),
  picture("both banks on a ring", named("Both banks"), "soft-box", "paper", RESTS.ring.down, [-8, 20], {
    onRing: true,
    frame: 1.45,
    aside: [0, -0.1],
  }),
  picture("first ring in the evening", named("First ring"), "lamp-at-hand", "oak", BACK, [15, 30], {
    exposure: 0.2,
    frame: 1.7,
    aside: [-0.3, -0.35],
  }),
  // a window throws a pool of the glass's own colour, which an even sky does not
  picture(
    "tinted steps by a window",
    withPiece("Three steps up", { tint: { rgb: [0.35, 0.6, 0.72], atMm: 20 } }),
    "north-window",
    "paper",
    BACK,
    [24, 17],
    { frame: 1.7, aside: [-0.2, -0.3] },
  ),
  picture("barrel on its side", named("Rain barrel"), "soft-box", "slate", SIDE, [25, 9], {
    exposure: 0.3,
    frame: 1.5,
    aside: [0, -0.4],
  }),
];

/** Unit direction from which the camera looks, in the piece's axes. */
function towardsOf({ down, round, above }: ContactPicture): Vec3 {
  const { up, across, along } = tableFrame(scale(down, -1));
  const [r, a] = [(round * Math.PI) / 180, (above * Math.PI) / 180];
  const level = [Math.cos(a) * Math.cos(r), Math.cos(a) * Math.sin(r)];
  const part = (k: 0 | 1 | 2) => level[0] * along[k] + level[1] * across[k] + Math.sin(a) * up[k];
  return [part(0), part(1), part(2)];
}

export function sceneOfPicture({ plan, light, lightTurnDeg, table, down, onRing }: ContactPicture): Scene {
  const solved = solvePlan(plan);
  const setting = LIGHT_SETTINGS[light];
  const lit = { kind: "setting", setting, turnRad: (lightTurnDeg * Math.PI) / 180 } as const;
  const bare = sceneOfPlan(solved, lit, false, undefined, EDGE_MM);
  const lain = { material: MATERIALS[table], radiusMm: plan.piece.diameterMm / 2 };
  return putOnTable(bare, scale(down, -1), -supportOf(cutBall(solved.planes), down), lain, onRing);
}

const [DISTANCE, F_NUMBER] = [10, 13];

export function viewOfPicture(picture: ContactPicture, scene: Scene): View {
  const fieldDeg = (2 * Math.atan(picture.frame / DISTANCE) * 180) / Math.PI;
  const camera = cameraTowards(towardsOf(picture), DISTANCE, fieldDeg, scene.tabletop?.up);
  const [right, up] = [normalize(camera.right), normalize(camera.up)];
  const [x, y] = picture.aside;
  return {
    eye: addScaled(addScaled(camera.at, right, -x), up, -y),
    right,
    up,
    back: scale(camera.forward, -1),
    fieldDeg,
    lens: lensOf(F_NUMBER, DISTANCE, fieldDeg, picture.plan.piece.diameterMm / 2),
  };
}
