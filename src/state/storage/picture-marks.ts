/**
 * Pictures lie in the storage once each, by their hash; where one stands in a text there is a mark instead. Marks are told from
 * whatever a person may have written: a text of theirs that begins like one is escaped.
 */

import { MARK } from "./pictures-when-needed.ts";

/** 64 hexadecimal digits (SHA-256) follow a mark's beginning, or another colon before a text that only looks like one. */
const ESCAPED = `${MARK}:`;
const MARK_IN_TEXT = /"glintwright-picture:([0-9a-f]{64})"/g;
const WHOLE_MARK = /^glintwright-picture:([0-9a-f]{64})$/;

/** Shorter ones cost less than their mark's row. Characters. */
const SHORTEST = 512;
const isPicture = (text: string): boolean =>
  text.length >= SHORTEST &&
  (text.startsWith("data:image/png;base64,") || text.startsWith("data:image/jpeg;base64,"));

type Fields = Readonly<Record<string, unknown>>;

/** Plain data with every text in it changed; the same object where nothing changes. Fields for which there is nothing are left out. */
function mapTexts(data: unknown, change: (text: string) => string | undefined): unknown {
  if (typeof data === "string") return change(data);
  if (typeof data !== "object" || data === null) return data;
  if (Array.isArray(data)) {
    const next = data.map((entry) => mapTexts(entry, change) ?? null);
    return next.every((entry, i) => entry === data[i]) ? data : next;
  }
  const fields = Object.entries(data as Fields);
  const next = fields.map(([key, entry]) => [key, mapTexts(entry, change)] as const);
  if (next.every(([, entry], i) => entry === fields[i][1])) return data;
  return Object.fromEntries(next.filter(([, entry]) => entry !== undefined));
}

/** The pictures in plain data, each once: PNG and JPEG as data URLs. */
export function picturesIn(data: unknown): ReadonlySet<string> {
  const found = new Set<string>();
  mapTexts(data, (text) => {
    if (isPicture(text)) found.add(text);
    return text;
  });
  return found;
}

/**
 * Plain data with marks in the place of pictures.
 * @param hashOf hexadecimal SHA-256 of a picture's data URL, for each that `picturesIn` finds
 */
export const withMarks = <T>(data: T, hashOf: (picture: string) => string): T =>
  mapTexts(data, (text) => {
    if (isPicture(text)) return MARK + hashOf(text);
    return text.startsWith(MARK) ? ESCAPED + text.slice(MARK.length) : text;
  }) as T;

/** The way back. A mark whose picture is gone leaves no field behind: the plan then has an id without a picture, and says so. */
export const withPictures = <T>(data: T, pictureOf: (hash: string) => string | undefined): T =>
  mapTexts(data, (text) => {
    if (!text.startsWith(MARK)) return text;
    if (text.startsWith(ESCAPED)) return MARK + text.slice(ESCAPED.length);
    const [, hash] = WHOLE_MARK.exec(text) ?? [];
    return hash === undefined ? text : pictureOf(hash);
  }) as T;

/** Hashes of all marks in the text of plain data. */
export const hashesIn = (text: string): readonly string[] => [
  ...new Set([...text.matchAll(MARK_IN_TEXT)].map(([, hash]) => hash)),
];
