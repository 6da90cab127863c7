/** What the system says of a file or a stream that can't be read or written, in words for the person. */
const WORDS: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file or folder",
  ENOTDIR: "there is no such file or folder",
  EISDIR: "this is a folder, a file is needed",
  EACCES: "that is not allowed",
  EPERM: "that is not allowed",
  EROFS: "nothing can be written there",
  ENAMETOOLONG: "the name is too long",
  ELOOP: "the link leads round in a circle",
  ENOSPC: "the disk is full",
  EDQUOT: "the disk is full",
  ENXIO: "nobody is at its other end",
  EPIPE: "nobody is at its other end",
  EMFILE: "too many files are open",
};

/** The system's code of an error (`ENOENT`), or null where it has none. */
export const systemCode = (error: unknown): string | null =>
  error instanceof Error &&
  "code" in error &&
  typeof error.code === "string" &&
  /^E[A-Z0-9]+$/.test(error.code)
    ? error.code
    : null;

/** @returns null for what no system has said: a fault of ours */
export function systemWords(error: unknown): string | null {
  const code = systemCode(error);
  return code === null ? null : (WORDS[code] ?? `the system says ${code}`);
}
