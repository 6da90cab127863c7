/**
 * Reading and writing the files a person named, whatever stands under those names: a folder, a device that never ends, a pipe
 * that nobody fills. Bounded in size and in patience, so that a command always ends, and with words.
 */
import { constants, type Stats } from "node:fs";
import { access, type FileHandle, open, stat } from "node:fs/promises";
import { dirname } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { systemCode, systemSaid } from "./system-fault.ts";
import { type Said, UsageError } from "./usage-error.ts";

const CHUNK = 1 << 16;
/** Between two looks into a pipe that has nothing yet. */
const LOOK_AGAIN_MS = 20;
/** A pipe that stays silent so long is given up. */
const SILENCE_MS = 5000;

const tooLarge = (most: number): UsageError => new UsageError(({ files }) => files.tooLarge(String(most)));

/** What can be read to an end: files, and pipes as a shell makes them. */
function mustEnd(about: Stats): void {
  if (about.isDirectory()) throw new UsageError(({ system }) => system.folder);
  if (!about.isFile() && !about.isFIFO()) throw new UsageError(({ files }) => files.device);
}

/** Bytes read into `into`; 0 at the end. A pipe without a writer, or without anything yet, is looked into again. */
async function readSome(file: FileHandle, into: Uint8Array, isPipeUnused: boolean): Promise<number> {
  for (let waited = 0; waited < SILENCE_MS; waited += LOOK_AGAIN_MS) {
    try {
      const { bytesRead } = await file.read(into, 0, into.length, null);
      if (bytesRead > 0 || !isPipeUnused) return bytesRead;
    } catch (error) {
      if (systemCode(error) !== "EAGAIN") throw error;
    }
    await pause(LOOK_AGAIN_MS);
  }
  throw new UsageError(({ files }) => files.silent(String(SILENCE_MS / 1000)));
}

async function readAll(file: FileHandle, most: number): Promise<Uint8Array> {
  const about = await file.stat();
  mustEnd(about);
  if (about.size > most) throw tooLarge(most);
  const chunks: Uint8Array[] = [];
  let sum = 0;
  for (;;) {
    const chunk = new Uint8Array(CHUNK);
    const count = await readSome(file, chunk, about.isFIFO() && sum === 0);
    if (count === 0) return Buffer.concat(chunks);
    chunks.push(chunk.subarray(0, count));
    sum += count;
    if (sum > most) throw tooLarge(most);
  }
}

/** Its words after what was being done; anything but the system's own faults stays what it is. */
function told(error: unknown, what: Said): unknown {
  const why = error instanceof UsageError ? error.said : systemSaid(error);
  return why === null
    ? error
    : new UsageError((words, language) => `${what(words, language)}: ${why(words, language)}`);
}

/**
 * @param most bytes that may be in it
 * @param what begins the line that says why it can't be read; its path unless given
 * @throws UsageError
 */
export async function readNamed(path: string, most: number, what: Said = () => path): Promise<Uint8Array> {
  try {
    // Without waiting: opening a pipe that nobody writes to would never end.
    const file = await open(path, constants.O_RDONLY | constants.O_NONBLOCK);
    try {
      return await readAll(file, most);
    } finally {
      await file.close();
    }
  } catch (error) {
    throw told(error, what);
  }
}

/** A pipe takes only so much at once; its reader may be as slow as it likes. */
async function writeAll(file: FileHandle, bytes: Uint8Array): Promise<void> {
  for (let done = 0; done < bytes.length; ) {
    try {
      done += (await file.write(bytes, done)).bytesWritten;
    } catch (error) {
      if (systemCode(error) !== "EAGAIN") throw error;
      await pause(LOOK_AGAIN_MS);
    }
  }
}

/** Looks whether `writeOut` can come to a good end, as far as can be told beforehand.  @throws UsageError */
export async function mustBeWritable(path: string): Promise<void> {
  try {
    const about = await stat(path).catch((error: unknown) => {
      if (systemCode(error) === "ENOENT") return null;
      throw error;
    });
    if (about?.isDirectory()) throw new UsageError(({ system }) => system.folder);
    await access(about ? path : dirname(path), constants.W_OK);
  } catch (error) {
    throw told(error, ({ files }) => files.cantWrite(path));
  }
}

/** Writes what `--out` asked for.  @throws UsageError, its line beginning with `--out` */
export async function writeOut(path: string, content: Uint8Array | string): Promise<void> {
  const { O_WRONLY, O_CREAT, O_TRUNC, O_NONBLOCK } = constants;
  try {
    const file = await open(path, O_WRONLY | O_CREAT | O_TRUNC | O_NONBLOCK);
    try {
      await writeAll(file, typeof content === "string" ? new TextEncoder().encode(content) : content);
    } finally {
      await file.close();
    }
  } catch (error) {
    throw told(error, ({ files }) => files.cantWrite(path));
  }
}
