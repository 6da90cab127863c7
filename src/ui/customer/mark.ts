/** A maker's mark from a picture file: as an address that holds it, small enough for a plan. */
import { MARK, TEXT } from "../../core/plan/limits.ts";

/** Widest and highest that a mark is kept, pixels: twice what a page shows. */
const SIDES = [512, 384, 256, 192, 128] as const;

export interface MarkFault {
  readonly fault: "too-large" | "unreadable";
}

const isMark = (address: string): boolean => address.length <= TEXT.mark && MARK.test(address);

const addressOf = (content: Blob): Promise<string> =>
  new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result));
    reader.onerror = () => reject(reader.error);
    reader.readAsDataURL(content);
  });

/** PNG no larger than `side`; null where the browser has no canvas for it. */
async function drawnWithin(picture: ImageBitmap, side: number): Promise<string | null> {
  const scale = Math.min(1, side / Math.max(picture.width, picture.height));
  const [width, height] = [picture.width, picture.height].map((n) => Math.max(1, Math.round(n * scale)));
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext("2d");
  if (!context) return null;
  context.drawImage(picture, 0, 0, width, height);
  return addressOf(await canvas.convertToBlob({ type: "image/png" }));
}

/** An SVG stays as it is; any other picture becomes a PNG, as large as a plan has room for. */
export async function markOf(file: File): Promise<string | MarkFault> {
  if (file.type === "image/svg+xml") {
    const address = await addressOf(new Blob([file], { type: file.type }));
    return isMark(address) ? address : { fault: "too-large" };
  }
  let picture: ImageBitmap;
  try {
    picture = await createImageBitmap(file);
  } catch {
    return { fault: "unreadable" };
  }
  for (const side of SIDES) {
    const address = await drawnWithin(picture, side);
    if (address !== null && isMark(address)) return address;
  }
  return { fault: "too-large" };
}
