/** What the engine throws, in words for a person; null for a fault of ours, which is to be seen with its trace. */
import { BrokenMesh, type MeshFault, NothingLeft } from "../core/geometry/broken-mesh.ts";
import { type CutLaw, InexactCut } from "../core/geometry/inexact-cut.ts";
import { BrokenPicture } from "../core/optics/broken-picture.ts";
import { HdrError } from "../core/optics/hdr-fault.ts";
import { PlanFileError } from "../core/plan/plan-file-error.ts";
import { PageTooLarge } from "../core/show/fit-page.ts";
import { engineFaults as de } from "./de/engine-faults.ts";
import { engineFaults as en } from "./en/engine-faults.ts";
import { fileFaultInWords } from "./file-faults.ts";
import { hdrFaultInWords } from "./hdr-faults.ts";
import type { Language } from "./language.ts";

export interface EngineFaultWords {
  readonly inexact: (law: CutLaw) => string;
  readonly brokenMesh: (why: string) => string;
  readonly mesh: Readonly<Record<MeshFault, string>>;
  readonly nothingLeft: string;
  readonly pageTooLarge: (kilobytes: string, limit: string) => string;
  readonly brokenPicture: (id: string) => string;
}

const WORDS: Readonly<Record<Language, EngineFaultWords>> = { en, de };

const kilobytes = (bytes: number, language: Language): string =>
  new Intl.NumberFormat(language, { maximumFractionDigits: 0 }).format(bytes / 1000);

export function engineFaultInWords(error: unknown, language: Language): string | null {
  const words = WORDS[language];
  if (error instanceof PlanFileError) return fileFaultInWords(error.fault, language);
  if (error instanceof HdrError) return hdrFaultInWords(error.fault, language);
  if (error instanceof BrokenPicture) return words.brokenPicture(error.id);
  if (error instanceof InexactCut) return words.inexact(error.law);
  if (error instanceof PageTooLarge)
    return words.pageTooLarge(kilobytes(error.bytes, language), kilobytes(error.limit, language));
  if (error instanceof BrokenMesh) return words.brokenMesh(words.mesh[error.fault]);
  return error instanceof NothingLeft ? words.nothingLeft : null;
}
