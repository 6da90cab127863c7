/**
 * USDZ (Pixar, OpenUSD, "Usdz File Format Specification"): a zip archive whose files are stored as they are, neither compressed nor
 * encrypted; the first is the layer that opens; the data of each begins at a multiple of 64 bytes from the archive's start, by
 * padding in the local header's extra field.
 */
import { strToU8, type Zippable, zipSync } from "fflate";
import type { SolvedPlan } from "../plan/solved.ts";
import type { PieceMesh } from "./piece-mesh.ts";
import { usdaOf } from "./usda.ts";

const ALIGNMENT = 64;
/** Bytes of a local header without name and extra field, and of an extra field's own head (PKWARE, APPNOTE 6.3.10, 4.3.7, 4.5.1). */
const LOCAL_HEADER = 30;
const EXTRA_HEAD = 4;
/** Identifies padding, as in other writers of this format; not taken by PKWARE's list. */
const PADDING_ID = 0x1986;
const LAYER = "piece.usda";
/** The same plan gives the same bytes: files carry no time of day. Zip counts years from 1980. */
const NO_TIME = "1980-01-02T00:00:00Z";

/** @param mesh of this plan, in metres */
export function usdzOf(mesh: PieceMesh, solved: SolvedPlan): Uint8Array<ArrayBuffer> {
  const before = LOCAL_HEADER + LAYER.length + EXTRA_HEAD;
  const padding = new Uint8Array((ALIGNMENT - (before % ALIGNMENT)) % ALIGNMENT);
  const files: Zippable = {
    [LAYER]: [strToU8(usdaOf(mesh, solved)), { level: 0, extra: { [PADDING_ID]: padding } }],
  };
  return zipSync(files, { mtime: NO_TIME }) as Uint8Array<ArrayBuffer>;
}
