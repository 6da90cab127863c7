/** Files of pictures, PNG or JPEG, to pixels. Apart from what only looks pixels up: the decoders are large. */
import { convertIndexedToRgb, decode as decodePng, hasPngSignature } from "fast-png";
import { decode as decodeJpeg } from "jpeg-js";
import type { Plan } from "../plan/document.ts";
import { PICTURES } from "../plan/limits.ts";
import { type PictureFile, pictureFile, pictureSize } from "../plan/pictures.ts";
import { BrokenPicture } from "./broken-picture.ts";
import type { Raster, Rasters } from "./raster.ts";

/** Channels, any depth, to 8-bit RGBA. `transparency`: the colour that counts as transparent, per channel (PNG, 11.3.1.1). */
function toRgba(
  data: ArrayLike<number>,
  channels: number,
  depth: number,
  pixels: number,
  transparency?: ArrayLike<number>,
): Uint8Array {
  const rgba = new Uint8Array(4 * pixels);
  const isColour = channels >= 3;
  const hasAlpha = channels === 2 || channels === 4;
  const scale = 255 / (2 ** depth - 1);
  for (let i = 0; i < pixels; i++) {
    const at = i * channels;
    let isClear = transparency !== undefined && !hasAlpha;
    for (let c = 0; c < 3; c++) {
      const value = data[at + (isColour ? c : 0)];
      rgba[4 * i + c] = Math.round(value * scale);
      if (isClear && value !== transparency?.[isColour ? c : 0]) isClear = false;
    }
    rgba[4 * i + 3] = hasAlpha ? Math.round(data[at + channels - 1] * scale) : isClear ? 0 : 255;
  }
  return rgba;
}

function rasterOfPng(bytes: Uint8Array): Raster {
  if (!hasPngSignature(bytes)) throw new Error("no PNG");
  const png = decodePng(bytes);
  const { width, height } = png;
  const pixels = width * height;
  if (png.palette) {
    const rgb = convertIndexedToRgb(png);
    return { width, height, rgba: toRgba(rgb, png.palette[0].length, 8, pixels) };
  }
  // fewer than 8 bits a pixel come packed, each row from a byte of its own
  const data = png.depth < 8 ? unpacked(png.data, width, height, png.depth) : png.data;
  return { width, height, rgba: toRgba(data, png.channels, png.depth, pixels, png.transparency) };
}

function unpacked(data: ArrayLike<number>, width: number, height: number, depth: number): Uint8Array {
  const rowBytes = Math.ceil((width * depth) / 8);
  const all = new Uint8Array(width * height);
  const mask = 2 ** depth - 1;
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const bit = x * depth;
      const byte = data[y * rowBytes + (bit >> 3)];
      all[y * width + x] = (byte >> (8 - depth - (bit & 7))) & mask;
    }
  return all;
}

function rasterOfJpeg(bytes: Uint8Array): Raster {
  const { width, height, data } = decodeJpeg(bytes, {
    useTArray: true,
    formatAsRGBA: true,
    tolerantDecoding: false,
    maxResolutionInMP: 20,
    maxMemoryUsageInMB: 256,
  });
  return { width, height, rgba: data };
}

/**
 * Decodes a PNG or a JPEG, no larger than a plan's pictures may be unless `most` says otherwise.
 * @param most pixels along an edge
 * @throws Error when it is damaged, or larger than that
 */
export function decodePicture(file: PictureFile, most: number = PICTURES.edge): Raster {
  const size = pictureSize(file);
  if (!size) throw new Error("no picture");
  // judged by its head, before anything is laid out for it
  if (Math.max(size.width, size.height) > most) throw new Error(`more than ${most} pixels along an edge`);
  return file.kind === "png" ? rasterOfPng(file.bytes) : rasterOfJpeg(file.bytes);
}

/** What can be shown of a plan's pictures, and what can't. */
export interface DecodedPictures {
  readonly rasters: Rasters;
  readonly damaged: readonly BrokenPicture[];
}

/** Decodes all pictures of a plan; one that is damaged leaves the others as they are. */
export function decodedPictures({ pictures = {} }: Plan): DecodedPictures {
  const rasters = new Map<string, Raster>();
  const damaged: BrokenPicture[] = [];
  for (const [id, url] of Object.entries(pictures)) {
    try {
      const file = pictureFile(url);
      if (!file) throw new Error("no picture");
      rasters.set(id, decodePicture(file));
    } catch (error) {
      damaged.push(new BrokenPicture(id, error));
    }
  }
  return { rasters, damaged };
}

/**
 * All pictures of a plan.
 * @throws BrokenPicture for the first that is damaged
 */
export function rastersOf(plan: Plan): Rasters {
  const { rasters, damaged } = decodedPictures(plan);
  if (damaged.length > 0) throw damaged[0];
  return rasters;
}
