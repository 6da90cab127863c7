/** Plans to write, and an independent reader of zip archives. */
import { inflateRawSync } from "node:zlib";
import type { Plan, Tier } from "../../../src/core/plan/document.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import type { SolvedPlan } from "../../../src/core/plan/solved.ts";

const tier = (
  id: string,
  side: Tier["side"],
  count: number,
  armAngleDeg: number,
  mm: number,
  finish?: Tier["finish"],
): Tier => ({ id, name: id, side, armAngleDeg, count, startDeg: 0, depth: { rule: "depth", mm }, finish });

export const planOf = (tiers: readonly Tier[], more: Partial<Plan> = {}): Plan => ({
  format: "glintwright-plan",
  version: 1,
  name: "Harbour light",
  piece: { diameterMm: 30, glass: "borosilicate" },
  rig: { wheelStops: 96 },
  tiers,
  ...more,
});

/** Names that would be markup, code or unwritable if a file took them for more than text. */
export const HOSTILE_NAME = `</title><script>alert("1")</script> & 'x' ]]> \u0000\u0007 \ud800 äß 硝子`;

/** Sixteen about the waist, eight leaning, a window of another finish, six below on ground glass. */
export const twoSided: SolvedPlan = solvePlan(
  planOf(
    [
      tier("waist", "front", 16, 0, 0.4),
      tier("lean", "front", 8, 42, 1.6),
      tier("window", "front", 1, 90, 2.5, "prepolished"),
      tier("foot", "back", 6, 50, 1.2, "ground"),
    ],
    {
      piece: {
        diameterMm: 30,
        glass: "borosilicate",
        tint: { rgb: [0.4, 0.7, 0.9], atMm: 12 },
        inkMarkDeg: 30,
      },
    },
  ),
);
/** Nothing round left. */
export const cubic: SolvedPlan = solvePlan(
  planOf([tier("sides", "front", 4, 0, 7), tier("top", "front", 1, 90, 7), tier("base", "back", 1, 90, 7)], {
    name: HOSTILE_NAME,
  }),
);
export const uncut: SolvedPlan = solvePlan(planOf([]));
export const gone: SolvedPlan = solvePlan(
  planOf([tier("top", "front", 1, 90, 16), tier("base", "back", 1, 90, 16)]),
);

/** Files of a zip archive by name, read by its central directory (PKWARE APPNOTE 6.3, sections 4.3.7, 4.3.12, 4.3.16). */
export function unzip(bytes: Uint8Array): Map<string, Uint8Array> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = bytes.length - 22;
  if (view.getUint32(end, true) !== 0x06054b50) throw new Error("no end of central directory");
  const files = new Map<string, Uint8Array>();
  let at = view.getUint32(end + 16, true);
  for (let i = view.getUint16(end + 10, true); i > 0; i--) {
    if (view.getUint32(at, true) !== 0x02014b50) throw new Error("no central directory entry");
    const method = view.getUint16(at + 10, true);
    const size = view.getUint32(at + 20, true);
    const [nameLength, extra, comment] = [28, 30, 32].map((o) => view.getUint16(at + o, true));
    const local = view.getUint32(at + 42, true);
    const name = new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + nameLength));
    const start = local + 30 + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
    const data = bytes.subarray(start, start + size);
    files.set(name, method === 0 ? data : inflateRawSync(data));
    at += 46 + nameLength + extra + comment;
  }
  return files;
}
