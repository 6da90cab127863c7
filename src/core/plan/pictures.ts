/**
 * Pictures that a plan carries for its inside: PNG or JPEG as data URLs (RFC 2397). Here only their head is read, so that a
 * plan opens quickly; `optics/decode-picture.ts` decodes them when light is traced.
 */
import type { InsideDesign, Plan } from "./document.ts";
import { PICTURES } from "./limits.ts";
import { PlanFileError } from "./plan-file-error.ts";

type PictureKind = "png" | "jpeg";

/** Bytes of a picture in a plan, and what they are said to be. */
export interface PictureFile {
  readonly kind: PictureKind;
  readonly bytes: Uint8Array;
}

const DATA_URL = /^data:image\/(png|jpeg);base64,([A-Za-z0-9+/]+={0,2})$/;
const PNG_SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
/** Base64 characters of a PNG's signature and its first chunk as far as the size: 24 bytes. */
const PNG_HEAD = 32;

function bytesOf(base64: string): Uint8Array {
  const binary = atob(base64);
  const bytes = new Uint8Array(binary.length);
  for (let i = 0; i < binary.length; i++) bytes[i] = binary.charCodeAt(i);
  return bytes;
}

/** The picture's file behind a data URL; null for any other text. */
export function pictureFile(url: string): PictureFile | null {
  const [, kind, base64] = DATA_URL.exec(url) ?? [];
  if (kind === undefined || base64.length % 4 !== 0) return null;
  return { kind: kind as PictureKind, bytes: bytesOf(base64) };
}

/** A picture's file as a data URL. */
export function pictureUrl({ kind, bytes }: PictureFile): string {
  const parts: string[] = [];
  for (let at = 0; at < bytes.length; at += 1 << 14)
    parts.push(String.fromCharCode(...bytes.subarray(at, at + (1 << 14))));
  return `data:image/${kind};base64,${btoa(parts.join(""))}`;
}

export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

/** Size from the IHDR chunk, the first of every PNG (W3C PNG, third edition, 5.6 and 11.2.1); null for no PNG. */
function pngSize(bytes: Uint8Array): PictureSize | null {
  if (bytes.length < 24 || PNG_SIGNATURE.some((byte, i) => bytes[i] !== byte)) return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  return { width: view.getUint32(16), height: view.getUint32(20) };
}

/** Size from the frame header SOF0 .. SOF15, DHT, JPG and DAC excepted (ITU-T T.81, B.2.2); null for no JPEG. */
function jpegSize(bytes: Uint8Array): PictureSize | null {
  if (bytes[0] !== 0xff || bytes[1] !== 0xd8) return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let at = 2; at + 9 < bytes.length; ) {
    if (bytes[at] !== 0xff) return null;
    const mark = bytes[at + 1];
    if (mark === 0xff) {
      at++;
      continue;
    }
    const isFrame = mark >= 0xc0 && mark <= 0xcf && mark !== 0xc4 && mark !== 0xc8 && mark !== 0xcc;
    if (isFrame) return { height: view.getUint16(at + 5), width: view.getUint16(at + 7) };
    at += 2 + view.getUint16(at + 2);
  }
  return null;
}

/** Width and height in pixels as the file's head says; null when it isn't what it is said to be. */
export const pictureSize = ({ kind, bytes }: PictureFile): PictureSize | null =>
  kind === "png" ? pngSize(bytes) : jpegSize(bytes);

/** Size of a data URL's picture, decoding no more of it than its head where that is possible. */
function sizeOfUrl(url: string): PictureSize | null {
  const [, kind, base64] = DATA_URL.exec(url) ?? [];
  if (kind === undefined || base64.length % 4 !== 0) return null;
  const head = kind === "png" ? base64.slice(0, PNG_HEAD) : base64;
  const size = pictureSize({ kind: kind as PictureKind, bytes: bytesOf(head) });
  return size && size.width > 0 && size.height > 0 ? size : null;
}

function checkPicture(id: string, url: string): void {
  const path = ["pictures", id];
  const size = sizeOfUrl(url);
  const found = url.slice(0, url.indexOf(",") + 1 || undefined);
  if (!size)
    throw new PlanFileError({ code: "wrong-kind", data: { found, allowed: { kind: "picture" } }, path });
  if (Math.max(size.width, size.height) > PICTURES.edge)
    throw new PlanFileError({ code: "picture-too-large", data: { ...size, most: PICTURES.edge }, path });
}

/** @throws PlanFileError for pictures that are too many, too large or none */
export function checkPictures(pictures: Readonly<Record<string, string>>): void {
  const path = ["pictures"];
  const all = Object.entries(pictures);
  if (all.length > PICTURES.count)
    throw new PlanFileError({ code: "too-many-entries", data: { most: PICTURES.count }, path });
  const characters = all.reduce((sum, [, url]) => sum + url.length, 0);
  if (characters > PICTURES.characters)
    throw new PlanFileError({
      code: "pictures-too-long",
      data: { characters, most: PICTURES.characters },
      path,
    });
  for (const [id, url] of all) checkPicture(id, url);
}

/** Ids of the pictures that a design shows. */
export const picturesOf = (design: InsideDesign): readonly string[] =>
  design.kind !== "picture"
    ? []
    : design.back === undefined
      ? [design.picture]
      : [design.picture, design.back];

/** Ids that the inside names and the plan has no picture for. */
export function missingPictures({ piece, pictures = {} }: Plan): readonly string[] {
  const named = new Set((piece.inside ?? []).flatMap(picturesOf));
  return [...named].filter((id) => !Object.hasOwn(pictures, id));
}
