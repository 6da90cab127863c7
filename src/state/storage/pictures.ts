/**
 * The pictures of all plans, each kept once by the SHA-256 of its data URL (FIPS 180-4). Texts of plans, undo steps, versions and the
 * journal hold marks (`picture-marks.ts`).
 */

import type { Plan } from "../../core/plan/document.ts";
import { serializePlan } from "../../core/plan/file.ts";
import { hashesIn, picturesIn, withMarks, withPictures } from "./picture-marks.ts";
import { mayHoldMarks } from "./pictures-when-needed.ts";
import type { RowChange, StoragePort } from "./port.ts";

/** Pictures whose hash is remembered: those of a few plans. Each may be millions of characters long. */
const REMEMBERED = 32;

/** Hashes of pictures that were seen. One for all libraries and the journal of a page. */
const hashes = new Map<string, string>();

function remember(picture: string, hash: string): void {
  hashes.delete(picture);
  hashes.set(picture, hash);
  for (const [oldest] of hashes) {
    if (hashes.size <= REMEMBERED) break;
    hashes.delete(oldest);
  }
}

/** SHA-256 of a text's UTF-8, in hexadecimal. The browser has it but on plain http. */
export async function sha256(
  text: string,
  subtle: SubtleCrypto | null = crypto.subtle ?? null,
): Promise<string> {
  const bytes = new TextEncoder().encode(text);
  const digest = subtle
    ? new Uint8Array(await subtle.digest("SHA-256", bytes))
    : (await import("@noble/hashes/sha2.js")).sha256(bytes);
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

async function hashOf(picture: string): Promise<string> {
  const hash = hashes.get(picture) ?? (await sha256(picture));
  remember(picture, hash);
  return hash;
}

/** Plain data with marks, at once; null while the hash of one of its pictures isn't known: `keepIn` finds it. */
export function markedNow<T>(data: T): T | null {
  const pictures = picturesIn(data);
  if ([...pictures].some((picture) => !hashes.has(picture))) return null;
  return withMarks(data, (picture) => hashes.get(picture) ?? "");
}

/** A text as plain data; null for one that is none. */
function dataOf(text: string): unknown {
  try {
    return JSON.parse(text) ?? null;
  } catch {
    return null;
  }
}

export type Pictures = ReturnType<typeof createPictures>;

export function createPictures(port: StoragePort) {
  /** Hashes of those that the storage has, as far as this page knows. */
  const kept = new Set<string>();

  /** Keeps the pictures in plain data. @returns the data with marks */
  async function keepIn<T>(data: T): Promise<T> {
    const named = new Map<string, string>();
    for (const picture of picturesIn(data)) named.set(picture, await hashOf(picture));
    const missing = [...named].filter(([, hash]) => !kept.has(hash));
    if (missing.length > 0) {
      const puts = missing.map(([url, id]): RowChange => ({ table: "pictures", put: { id, url } }));
      await port.write(puts);
      for (const [, hash] of missing) kept.add(hash);
    }
    return withMarks(data, (picture) => named.get(picture) ?? "");
  }

  /** Those of the hashes that the storage has, and that are what their hash says. */
  async function read(wanted: readonly string[]): Promise<ReadonlyMap<string, string>> {
    const found = new Map<string, string>();
    for (const hash of wanted) {
      const url: unknown = (await port.get("pictures", hash))?.url;
      if (typeof url !== "string" || (await hashOf(url)) !== hash) continue;
      kept.add(hash);
      found.set(hash, url);
    }
    return found;
  }

  return {
    /** A plan's text for the storage; its pictures are kept. */
    packPlan: async (plan: Plan): Promise<string> => serializePlan(await keepIn(plan)),
    /** A text for the storage, plan or not; as it is where there is nothing to mark. */
    packText: async (text: string): Promise<string> => {
      const data = dataOf(text);
      if (data === null) return text;
      const marked = await keepIn(data);
      return marked === data ? text : serializePlan(marked as Plan);
    },
    /** A text with marks from elsewhere, for the storage: whatever they are said to be there, pictures get their true hash here. */
    repackText: async (text: string, pictureOf: (hash: string) => string | undefined): Promise<string> => {
      const data = dataOf(text);
      return data === null ? text : serializePlan((await keepIn(withPictures(data, pictureOf))) as Plan);
    },
    packData: keepIn,
    /** A text of the storage as it was: with its pictures, as far as they are there. */
    unpackText: async (text: string): Promise<string> => {
      if (!mayHoldMarks(text)) return text;
      const data = dataOf(text);
      if (data === null) return text;
      const found = await read(hashesIn(text));
      return serializePlan(withPictures(data, (hash) => found.get(hash)) as Plan);
    },
    read,
    /** Whether nothing of plain data would be lost without it. */
    hasAllOf: (data: unknown): boolean =>
      [...picturesIn(data)].every((picture) => kept.has(hashes.get(picture) ?? "")),
    /** Takes away the pictures with these hashes. */
    erase: async (gone: readonly string[]): Promise<void> => {
      for (const hash of gone) kept.delete(hash);
      await port.write(gone.map((erase): RowChange => ({ table: "pictures", erase })));
    },
  };
}

/** A text as far as it can be read without its pictures: for what a shelf tells of a plan. */
export function withoutPictures(text: string): string {
  if (!mayHoldMarks(text)) return text;
  const data = dataOf(text);
  return data === null ? text : JSON.stringify(withPictures(data, () => undefined));
}
