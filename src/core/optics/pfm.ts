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
