/** `export PLAN.json --out FILE`: a model or a true-size drawing of the cut piece, by the file's ending. */
import { basename, extname } from "node:path";
import { cutBall } from "../../core/geometry/solid.ts";
import { glbOf } from "../../core/models/glb.ts";
import { outlinesSvg } from "../../core/models/outlines-svg.ts";
import { pieceMesh } from "../../core/models/piece-mesh.ts";
import { skinSvg } from "../../core/models/skin-svg.ts";
import { stlOf } from "../../core/models/stl.ts";
import { threeMfOf } from "../../core/models/three-mf.ts";
import { usdzOf } from "../../core/models/usdz.ts";
import { solvePlan } from "../../core/plan/solve.ts";
import type { SolvedPlan } from "../../core/plan/solved.ts";
import { writeOut } from "../files.ts";
import type { Options } from "../options.ts";
import { printJson } from "../print.ts";
import { readPlan } from "../read-plan.ts";
import { UsageError } from "../usage-error.ts";

const MILLIMETRES = 1;
const METRES = 1000;

type Writer = (solved: SolvedPlan) => Uint8Array | string;
const WRITERS: Readonly<Record<string, Writer>> = {
  ".stl": (solved) => stlOf(pieceMesh(solved, MILLIMETRES), solved.plan.name),
  ".3mf": (solved) => threeMfOf(pieceMesh(solved, MILLIMETRES), solved.plan.name),
  ".glb": (solved) => glbOf(pieceMesh(solved, METRES), solved),
  ".usdz": (solved) => usdzOf(pieceMesh(solved, METRES), solved),
};
const DRAWINGS: Readonly<Record<string, Writer>> = {
  skin: (solved) => skinSvg(solved, cutBall(solved.planes)),
  outlines: (solved) => outlinesSvg(solved, cutBall(solved.planes)),
};

function writerFor(out: string, drawing: string): Writer {
  const ending = extname(out).toLowerCase();
  if (ending === ".svg") {
    if (Object.hasOwn(DRAWINGS, drawing)) return DRAWINGS[drawing];
    throw new UsageError(({ refused }) => refused.drawing(drawing, Object.keys(DRAWINGS).join(", ")));
  }
  if (Object.hasOwn(WRITERS, ending)) return WRITERS[ending];
  const allowed = [...Object.keys(WRITERS), ".svg"].join(", ");
  throw new UsageError(({ refused }) => refused.modelEnding(out, allowed));
}

/** @throws UsageError for an ending that names no model, or a place that can't be written; NothingLeft, BrokenMesh for a model that would not be whole */
export async function run([planPath]: readonly string[], options: Options): Promise<void> {
  const out = String(options.out);
  const write = writerFor(out, String(options.drawing ?? "skin"));
  const { plan } = await readPlan(planPath);
  const content = write(solvePlan(plan));
  await writeOut(out, content);
  await printJson({ wrote: out, name: basename(out), bytes: Buffer.byteLength(content) });
}
