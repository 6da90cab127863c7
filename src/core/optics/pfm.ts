/** Portable FloatMap: linear radiance as it is. Source: P. Debevec, PFM Portable FloatMap Image Format (from memory). */

/**
 * @param rows three floats a pixel, rows from the top, `width` pixels each
 * @returns the file: colour ("PF"), little-endian (scale -1), rows from the bottom as the format wants
 */
export function writePfm(width: number, height: number, rows: Float32Array): Uint8Array {
  const header = new TextEncoder().encode(`PF\n${width} ${height}\n-1.0\n`);
  const file = new Uint8Array(header.length + rows.length * 4);
  file.set(header);
  const view = new DataView(file.buffer, header.length);
  for (let y = 0; y < height; y++)
    for (let i = 0; i < 3 * width; i++)
      view.setFloat32(4 * (3 * width * y + i), rows[3 * width * (height - 1 - y) + i], true);
  return file;
}

/**
 * Reads what `writePfm` writes: colour, either byte order.
 * @returns rows from the top, three floats a pixel
 * @throws Error for anything else
 */
export function readPfm(file: Uint8Array): { width: number; height: number; rows: Float32Array } {
  const head = /^PF\n(\d+) (\d+)\n(-?[\d.]+)\n/.exec(new TextDecoder("latin1").decode(file.subarray(0, 64)));
  if (!head) throw new Error("not a colour Portable FloatMap");
  const [width, height, isLittle] = [Number(head[1]), Number(head[2]), Number(head[3]) < 0];
  const line = 3 * width;
  if (file.length !== head[0].length + 4 * line * height)
    throw new Error("the file is not as long as it says");
  const view = new DataView(file.buffer, file.byteOffset + head[0].length);
  const rows = new Float32Array(line * height);
  for (let y = 0; y < height; y++)
    for (let i = 0; i < line; i++)
      rows[line * (height - 1 - y) + i] = view.getFloat32(4 * (line * y + i), isLittle);
  return { width, height, rows };
}
