/** Printed pages read back by PDF.js (Mozilla, Apache-2.0): sizes, text, and every filled shape's box in millimetres on the paper. */
import { getDocument, OPS } from "pdfjs-dist/legacy/build/pdf.mjs";

const MM_PER_POINT = 25.4 / 72;

export interface PdfPage {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly text: string;
  /** Runs of text with the size of their type, points. */
  readonly runs: readonly { readonly text: string; readonly pt: number }[];
  /** Width and height of every path's box, mm; none where they were not asked for. */
  readonly boxes: readonly { readonly widthMm: number; readonly heightMm: number }[];
}

type Matrix = readonly [number, number, number, number, number, number];

const times = (m: Matrix, n: Matrix): Matrix => [
  m[0] * n[0] + m[2] * n[1],
  m[1] * n[0] + m[3] * n[1],
  m[0] * n[2] + m[2] * n[3],
  m[1] * n[2] + m[3] * n[3],
  m[0] * n[4] + m[2] * n[5] + m[4],
  m[1] * n[4] + m[3] * n[5] + m[5],
];

/** What PDF.js gives with a path: how it is painted, its points, and its box in the path's own units. */
type PathArguments = readonly [
  paint: number,
  points: unknown,
  box: readonly [number, number, number, number],
];

interface Operators {
  readonly fnArray: readonly number[];
  readonly argsArray: readonly (readonly unknown[] | null)[];
}

/** Boxes of paths: their least and greatest coordinates, carried to the paper by the matrix in force. */
function boxesOf({ fnArray, argsArray }: Operators): PdfPage["boxes"] {
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  const kept: Matrix[] = [];
  const boxes: { widthMm: number; heightMm: number }[] = [];
  fnArray.forEach((op, i) => {
    if (op === OPS.save) kept.push(matrix);
    else if (op === OPS.restore) matrix = kept.pop() ?? matrix;
    else if (op === OPS.transform) matrix = times(matrix, argsArray[i] as unknown as Matrix);
    else if (op === OPS.constructPath) {
      const [left, low, right, high] = (argsArray[i] as PathArguments)[2];
      const [w, h] = [right - left, high - low];
      boxes.push({
        widthMm: (Math.abs(matrix[0] * w) + Math.abs(matrix[2] * h)) * MM_PER_POINT,
        heightMm: (Math.abs(matrix[1] * w) + Math.abs(matrix[3] * h)) * MM_PER_POINT,
      });
    }
  });
  return boxes;
}

/** @param what boxes take as long again as all else */
export async function pdfPages(
  bytes: Uint8Array,
  what: "text" | "boxes" = "text",
): Promise<readonly PdfPage[]> {
  const task = getDocument({ data: new Uint8Array(bytes), isEvalSupported: false, verbosity: 0 });
  const pdf = await task.promise;
  const pages: PdfPage[] = [];
  for (let n = 1; n <= pdf.numPages; n++) {
    const page = await pdf.getPage(n);
    const [left, low, right, high] = page.view;
    const { items } = await page.getTextContent();
    const runs = items.flatMap((item) =>
      "str" in item && item.str.trim()
        ? [{ text: item.str, pt: Math.hypot(item.transform[2], item.transform[3]) }]
        : [],
    );
    pages.push({
      widthMm: (right - left) * MM_PER_POINT,
      heightMm: (high - low) * MM_PER_POINT,
      text: items.map((item) => ("str" in item ? item.str : "")).join(" "),
      runs,
      boxes: what === "boxes" ? boxesOf(await page.getOperatorList()) : [],
    });
  }
  await task.destroy();
  return pages;
}
