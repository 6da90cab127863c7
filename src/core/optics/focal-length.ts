/**
 * How far a camera stood, from what its file says of the lens. JPEG files carry EXIF (CIPA DC-008, "Exchangeable image file format
 * for digital still cameras"): in APP1 a TIFF structure whose Exif directory may hold tag 0xA405, FocalLengthIn35mmFilm.
 */

const APP1 = 0xe1;
const EXIF_DIRECTORY = 0x8769;
const FOCAL_LENGTH_IN_35MM_FILM = 0xa405;
const SHORT = 3;
const ENTRY_BYTES = 12;

/** Focal length in mm as on 35 mm film, or null where the file does not say it. Nothing else is read, and nothing is kept. */
export function focalLength35(bytes: Uint8Array): number | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  try {
    const tiff = exifStart(view);
    return tiff === null
      ? null
      : focalIn(new DataView(view.buffer, view.byteOffset + tiff, view.byteLength - tiff));
  } catch (error) {
    // A broken directory points beyond the file: then nothing is known of the lens.
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** Where the TIFF structure of a JPEG's APP1 begins. @throws RangeError beyond the file */
function exifStart(view: DataView): number | null {
  if (view.getUint16(0) !== 0xffd8) return null;
  for (let at = 2; view.getUint8(at) === 0xff; at += 2 + view.getUint16(at + 2)) {
    const marker = view.getUint8(at + 1);
    // "Exif", two zeros
    if (marker === APP1 && view.getUint32(at + 4) === 0x45786966 && view.getUint16(at + 8) === 0)
      return at + 10;
    // from the start of scan on come the pixels
    if (marker === 0xda) return null;
  }
  return null;
}

function focalIn(tiff: DataView): number | null {
  const isLittle = tiff.getUint16(0) === 0x4949;
  const short = (at: number) => tiff.getUint16(at, isLittle);
  const entry = (directory: number, tag: number): number | null => {
    for (let k = 0; k < short(directory); k++) {
      const at = directory + 2 + ENTRY_BYTES * k;
      if (short(at) === tag) return at;
    }
    return null;
  };
  if (short(2) !== 42) return null;
  const pointer = entry(tiff.getUint32(4, isLittle), EXIF_DIRECTORY);
  const focal =
    pointer === null ? null : entry(tiff.getUint32(pointer + 8, isLittle), FOCAL_LENGTH_IN_35MM_FILM);
  if (focal === null || short(focal + 2) !== SHORT) return null;
  const mm = short(focal + 8);
  return mm > 0 ? mm : null;
}

/** Diagonal of a frame of 35 mm film, 36 mm x 24 mm: focal lengths are told for a picture with this diagonal. */
const FILM_DIAGONAL_MM = Math.hypot(36, 24);

/**
 * Distance of the camera from the ball's centre, in radii: the outline is the tangent cone, whose half angle has the tangent
 * r / f in pixels and the sine 1 / distance. Right where the photograph is not cropped and the ball stands near its middle.
 * @param radius of the outline, @param diagonal of the photograph, both in pixels
 */
export function distanceByLens(focalMm: number, radius: number, diagonal: number): number {
  const f = (focalMm * diagonal) / FILM_DIAGONAL_MM;
  return Math.hypot(f, radius) / radius;
}
