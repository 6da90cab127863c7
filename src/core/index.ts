/** The engine as a library: what other programs may rely on. Pure; runs in Node, workers and browsers alike. */
export { finishedOf, type Report, reportPlan } from "./check/report.ts";
export type { Plane } from "./geometry/plane.ts";
export { cutBall } from "./geometry/solid.ts";
export type { Solid } from "./geometry/solid-types.ts";
export type { Plan } from "./plan/document.ts";
export { PlanFileError, parsePlan, serializePlan } from "./plan/file.ts";
export type { PlanFinding as Finding } from "./plan/finding.ts";
export { solvePlan } from "./plan/solve.ts";
export type { SolvedPlan } from "./plan/solved.ts";
