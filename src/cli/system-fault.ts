/** What the system says of a file or a stream that can't be read or written, in words for the person. */
import type { CommandLineWords } from "../words/command-line.ts";
import type { Said } from "./usage-error.ts";

const KINDS = {
  ENOENT: "noSuch",
  ENOTDIR: "noSuch",
  EISDIR: "folder",
  EACCES: "notAllowed",
  EPERM: "notAllowed",
  EROFS: "readOnly",
  ENAMETOOLONG: "longName",
  ELOOP: "circle",
  ENOSPC: "full",
  EDQUOT: "full",
  ENXIO: "nobody",
  EPIPE: "nobody",
  EMFILE: "tooManyOpen",
} as const satisfies Readonly<Record<string, keyof CommandLineWords["system"]>>;

/** The system's code of an error (`ENOENT`), or null where it has none. */
export const systemCode = (error: unknown): string | null =>
  error instanceof Error &&
  "code" in error &&
  typeof error.code === "string" &&
  /^E[A-Z0-9]+$/.test(error.code)
    ? error.code
    : null;

const isKnown = (code: string): code is keyof typeof KINDS => Object.hasOwn(KINDS, code);

/** @returns null for what no system has said: a fault of ours */
export function systemSaid(error: unknown): Said | null {
  const code = systemCode(error);
  if (code === null) return null;
  return ({ system }) => (isKnown(code) ? system[KINDS[code]] : system.other(code));
}
