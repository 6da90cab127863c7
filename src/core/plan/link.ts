/**
 * A plan as a link: the whole file, compressed, in the part of an address that no server ever sees. `#plan=1.` and then
 * raw DEFLATE (RFC 1951) in base64url (RFC 4648, section 5, unpadded). Reading is bounded, whatever is pasted in.
 */
import { deflateSync, Inflate, strFromU8, strToU8 } from "fflate";
import { encode } from "uqr";
import type { Plan } from "./document.ts";
import { type PlanFile, parsePlan } from "./file.ts";
import { FILE } from "./limits.ts";
import { PlanFileError } from "./plan-file-error.ts";

const MARK = "plan=";
/** Form of the link, not of the plan in it. A change to the dictionary below is a new form. */
const FORM = "1";
/** Characters after the mark; longer addresses are cut off by mail programs and chats. Common practice, no source. */
export const LONGEST_LINK = 16_000;
/** Bytes that the largest QR code holds at its lowest error correction (ISO/IEC 18004, version 40-L, byte mode). */
const LONGEST_QR = 2953;
/** Compressed bytes handed to the inflater at a time; DEFLATE grows them 1032-fold at most. */
const SLICE = 512;

/** Words that most plans hold, rarest first: what stands here costs a link next to nothing. */
const DICTIONARY = strToU8(
  '"otherDiametersMm":["tint":{"rgb":["atMm":"inside":[{"kind":"ribbon","petals","speckle","backing","bubble","core",' +
    '"asCut":{"widthMm":"readDeg":"facets":{"finish":"ground""prepolished""polished""rule":"width","rule":"gap",' +
    '"notes":"toleranceMm":0.0"stages":[{"id":"grainUm":"damageUm":"lap":{"diameterMm":"bandMm":["rpm":' +
    '"arm":{"lengthMm":["pivotToAxisMm":"pivotHeightMm":["dop":{"side":"back","diameterMm":"glass":"soda-lime"' +
    '{"format":"glintwright-plan","version":1,"name":""piece":{"diameterMm":30,"glass":"borosilicate"},' +
    '"rig":{"wheelStops":96},"tiers":[{"id":"t1","name":"side":"back","side":"front","armAngleDeg":' +
    '"count":12,"startDeg":0,"depth":{"rule":"depth","mm":"depth":{"rule":"edge","mm":' +
    '"depth":{"rule":"corners","of":"t"depth":{"rule":"close","to":"t"depth":{"rule":"touch"}},{"id":"t',
);

function toBase64Url(bytes: Uint8Array): string {
  let binary = "";
  for (const byte of bytes) binary += String.fromCharCode(byte);
  return btoa(binary).replace(/\+/g, "-").replace(/\//g, "_").replace(/=+$/, "");
}

/** @throws PlanFileError for characters that base64url doesn't have */
function fromBase64Url(text: string): Uint8Array {
  if (!/^[A-Za-z0-9_-]+$/.test(text) || text.length % 4 === 1)
    throw new PlanFileError({ code: "link-damaged", data: {} });
  const binary = atob(text.replace(/-/g, "+").replace(/_/g, "/"));
  return Uint8Array.from(binary, (c) => c.charCodeAt(0));
}

/** Inflates slice by slice and stops once more comes out than a plan may hold. @throws PlanFileError */
function inflateBounded(bytes: Uint8Array): Uint8Array {
  const parts: Uint8Array[] = [];
  let total = 0;
  let complete = false;
  const inflate = new Inflate({ dictionary: DICTIONARY }, (part, last) => {
    parts.push(part);
    total += part.length;
    complete = last;
  });
  try {
    for (let at = 0; at < bytes.length && total <= FILE.characters; at += SLICE)
      inflate.push(bytes.slice(at, at + SLICE), at + SLICE >= bytes.length);
  } catch {
    throw new PlanFileError({ code: "link-damaged", data: {} });
  }
  if (total > FILE.characters) throw new PlanFileError({ code: "link-too-full", data: {} });
  if (!complete) throw new PlanFileError({ code: "link-damaged", data: {} });
  const whole = new Uint8Array(total);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

/** Text as a link carries it: raw DEFLATE in base64url. */
export const packedText = (text: string): string =>
  toBase64Url(deflateSync(strToU8(text), { level: 9, dictionary: DICTIONARY }));

/** @throws PlanFileError for what is too long, damaged, or more than a plan may hold */
export function unpackedText(text: string): string {
  if (text.length > LONGEST_LINK)
    throw new PlanFileError({ code: "link-too-long", data: { characters: text.length, most: LONGEST_LINK } });
  return strFromU8(inflateBounded(fromBase64Url(text)));
}

/** The plan as a link carries it: pictures stay behind, their ids in the inside remain. */
function withoutPictures({ pictures: _, ...plan }: Plan): Plan {
  return plan;
}

/**
 * The fragment of a link that carries the whole plan but its pictures, without the `#`.
 * @throws PlanFileError when it would be longer than `LONGEST_LINK`
 */
export function fragmentOf(plan: Plan): string {
  const text = packedText(JSON.stringify(withoutPictures(plan)));
  if (text.length > LONGEST_LINK)
    throw new PlanFileError({
      code: "plan-too-long-for-link",
      data: { characters: text.length, most: LONGEST_LINK },
    });
  return `${MARK}${FORM}.${text}`;
}

/**
 * The plan that a fragment carries, or null when it carries none (another use of the address).
 * @param fragment with or without the leading `#`
 * @throws PlanFileError when a plan was meant but can't be read
 */
export function planFromFragment(fragment: string): PlanFile | null {
  const body = fragment.startsWith("#") ? fragment.slice(1) : fragment;
  if (!body.startsWith(MARK)) return null;
  const [form, text = ""] = body.slice(MARK.length).split(".", 2);
  if (form !== FORM) throw new PlanFileError({ code: "link-newer", data: {} });
  return parsePlan(unpackedText(text));
}

export interface QrCode {
  /** Side in modules, the quiet border of 4 on each side included. */
  readonly size: number;
  /** SVG path of the dark modules in a view box of 0 0 size size. */
  readonly path: string;
}

/**
 * An address as a QR code (ISO/IEC 18004).
 * @throws PlanFileError when it is longer than a code can hold
 */
export function qrCodeOf(address: string): QrCode {
  const bytes = strToU8(address).length;
  if (bytes > LONGEST_QR)
    throw new PlanFileError({
      code: "link-too-long-for-code",
      data: { characters: bytes, most: LONGEST_QR },
    });
  const { data, size } = encode(address, { ecc: "L", border: 4 });
  const runs = data.flatMap((row, y) => row.flatMap((dark, x) => (dark ? [`M${x} ${y}h1v1h-1z`] : [])));
  return { size, path: runs.join("") };
}
