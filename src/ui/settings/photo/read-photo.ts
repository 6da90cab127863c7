/** A file that the browser shows as a picture, to pixels: turned as its EXIF says; place and device stay behind. */
import { focalLength35 } from "../../../core/optics/focal-length.ts";
import type { Raster } from "../../../core/optics/raster.ts";

/** Pixels along the longer edge: what becomes the inside has 512. */
const MOST_EDGE = 1600;

export interface ReadPhoto {
  readonly raster: Raster;
  /** Focal length as on 35 mm film, where the file says it. */
  readonly focalMm: number | null;
}

/** What a file says of its lens stands within its first bytes. */
const HEAD_BYTES = 256 * 1024;

/** @throws DOMException for what is no picture */
export async function readPhoto(file: Blob): Promise<ReadPhoto> {
  const bitmap = await createImageBitmap(file);
  try {
    const scale = Math.min(1, MOST_EDGE / Math.max(bitmap.width, bitmap.height));
    const [width, height] = [bitmap.width, bitmap.height].map((side) =>
      Math.max(1, Math.round(side * scale)),
    );
    const canvas = Object.assign(document.createElement("canvas"), { width, height });
    const context = canvas.getContext("2d", { willReadFrequently: true, colorSpace: "srgb" });
    if (!context) throw new DOMException("no canvas", "NotSupportedError");
    context.imageSmoothingQuality = "high";
    context.drawImage(bitmap, 0, 0, width, height);
    const { data } = context.getImageData(0, 0, width, height);
    const head = new Uint8Array(await file.slice(0, HEAD_BYTES).arrayBuffer());
    return {
      raster: { width, height, rgba: new Uint8Array(data.buffer) },
      focalMm: focalLength35(head),
    };
  } finally {
    bitmap.close();
  }
}
