/** What the look is timed on: pieces with 25, 60 and 120 facets, and the plain yardstick's view of the first. */

import { supportOf } from "../../../src/core/check/size.ts";
import type { Plane } from "../../../src/core/geometry/plane.ts";
import { cutBall } from "../../../src/core/geometry/solid.ts";
import { scale, type Vec3 } from "../../../src/core/geometry/vec.ts";
import { EDGE_MM } from "../../../src/core/optics/edges.ts";
import { ROUGHNESS } from "../../../src/core/optics/finish.ts";
import { LIGHT_SETTINGS } from "../../../src/core/optics/light-settings.ts";
import { MATERIALS, type MaterialName } from "../../../src/core/optics/materials.ts";
import { RESTS } from "../../../src/core/optics/rest.ts";
import { makeScene, putOnTable, type Scene, sceneOfPlan } from "../../../src/core/optics/scene.ts";
import { tableFrame } from "../../../src/core/optics/tabletop.ts";
import type { Finish, Piece } from "../../../src/core/plan/document.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import type { SolvedPlan } from "../../../src/core/plan/solved.ts";
import { mat3, type Uniforms, vec3, vec4 } from "../../../src/render/uniforms.ts";
import { type View, viewColumns, viewFrom } from "../../../src/render/view.ts";
import { EXAMPLES } from "../../../src/ui/examples.ts";
import { ON_TABLE } from "../../../src/ui/look/lying.ts";
import { eyeFrame, eyePlace, FIELD_DEG, HOME, type Orbit } from "../../../src/ui/piece/camera.ts";

/** Facets of equal size spread over the whole ball on a golden spiral; the more, the shallower, so that each shows. */
export function spreadPlanes(count: number): Plane[] {
  const depth = 1.75 / count;
  const golden = Math.PI * (3 - Math.sqrt(5));
  return Array.from({ length: count }, (_, k) => {
    const z = 1 - (2 * k + 1) / count;
    const r = Math.sqrt(1 - z * z);
    const n: Vec3 = [r * Math.cos(k * golden), r * Math.sin(k * golden), z];
    return { n, h: 1 - depth };
  });
}

const MARBLE: Piece = { diameterMm: 30, glass: "borosilicate" };
const WINDOW = { kind: "setting", setting: LIGHT_SETTINGS["north-window"], turnRad: 0 } as const;

export const benchScene = (count: number, finish: Finish = "polished", inside?: Piece["inside"]): Scene =>
  marbleScene(spreadPlanes(count), finish, inside);

/** The same on a paper table, on its back. */
export const onPaper = (count: number): Scene =>
  putOnTable(benchScene(count), [0, 0, 1], -1, {
    material: MATERIALS.paper,
    radiusMm: MARBLE.diameterMm / 2,
  });

/** The bench's marble with these facets, in its light. */
export function marbleScene(
  planes: readonly Plane[],
  finish: Finish = "polished",
  inside?: Piece["inside"],
): Scene {
  const piece = inside ? { ...MARBLE, inside } : MARBLE;
  return makeScene({ piece, planes, roughness: planes.map(() => ROUGHNESS[finish]), light: WINDOW });
}

/** The ball fills the picture's height in all of them. */
export const BENCH_VIEW: View = viewFrom(20, 60, 10, 11.5);

/** What the yardstick takes: as many planes as it was made for. */
export const bareUniforms = (view: View, count: number): Uniforms => ({
  planes: vec4(spreadPlanes(count).flatMap(({ n, h }) => [...n, h])),
  eye: vec3(view.eye),
  view: mat3(viewColumns(view)),
});

function solvedExample(name: string): SolvedPlan {
  const plan = EXAMPLES.find((example) => example.name === name);
  if (!plan) throw new Error(`no example is called ${name}`);
  return solvePlan(plan);
}

const inWindow = (solved: SolvedPlan): Scene => sceneOfPlan(solved, WINDOW, false, undefined, EDGE_MM);

function seenFrom(eye: Orbit): View {
  const { out, right, up } = eyeFrame(eye);
  return { eye: eyePlace(eye), right, up, back: out, fieldDeg: FIELD_DEG };
}

/** What Look shows of an example, as it is opened. */
export const exampleInHand = (name: string): { scene: Scene; view: View } => ({
  scene: inWindow(solvedExample(name)),
  view: seenFrom(HOME),
});

/** What Look shows of an example as soon as a table is chosen: on its side, from where a piece on a table is first seen. */
export function exampleOnTable(name: string, material: MaterialName): { scene: Scene; view: View } {
  const solved = solvedExample(name);
  const { down } = RESTS.side;
  const up = scale(down, -1);
  const lain = { material: MATERIALS[material], radiusMm: solved.plan.piece.diameterMm / 2 };
  return {
    scene: putOnTable(inWindow(solved), up, -supportOf(cutBall(solved.planes), down), lain),
    view: seenFrom({ ...ON_TABLE, stand: tableFrame(up) }),
  };
}
