/** A traced picture as a PNG file: on the page's ground or on nothing, with or without a line of words below. */

/** Height of the caption's band and size of its letters, as shares of the picture's width. */
const BAND = 0.075;
const LETTERS = 0.026;

/** @throws Error when the browser can't make a canvas of this size or encode it */
export async function pngOf(
  picture: ImageData,
  isTransparent: boolean,
  caption: string | null,
): Promise<Blob> {
  const { width, height } = picture;
  const band = caption ? Math.round(width * BAND) : 0;
  const canvas = new OffscreenCanvas(width, height + band);
  const context = canvas.getContext("2d");
  if (!context) throw new Error("the browser has no canvas of this size");
  const page = getComputedStyle(document.body);
  if (!isTransparent) {
    context.fillStyle = groundColor();
    context.fillRect(0, 0, width, height + band);
  }
  // Putting pixels replaces what is there; drawing a picture lets the ground through.
  context.drawImage(await createImageBitmap(picture), 0, 0);
  if (caption) {
    context.fillStyle = page.color;
    context.font = `${Math.round(width * LETTERS)}px ${page.fontFamily}`;
    context.textAlign = "center";
    context.textBaseline = "middle";
    context.fillText(caption, width / 2, height + band * 0.4, width * 0.94);
  }
  return canvas.convertToBlob({ type: "image/png" });
}

/** The page's ground, as a colour that a canvas takes. */
export const groundColor = (): string =>
  resolved(
    getComputedStyle(document.documentElement).getPropertyValue("--ground"),
    getComputedStyle(document.body),
  );

/** A colour that a canvas takes: tokens may depend on day or lamp, which only an element resolves. */
function resolved(token: string, page: CSSStyleDeclaration): string {
  const probe = document.createElement("span");
  probe.style.color = token;
  probe.hidden = true;
  document.body.append(probe);
  const color = getComputedStyle(probe).color;
  probe.remove();
  return color || page.backgroundColor;
}
