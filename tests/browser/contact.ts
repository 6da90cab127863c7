/**
 * `npm run contact -- FOLDER [--size 420] [--samples 64] [--only 1,4]`: the ten product pictures in one sheet, five by two, for
 * people to look at with photographs of real glass in mind. The folder is not to lie in the repository; pictures that are
 * not asked for anew are taken from it. Prints how long each took.
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, relative, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { decode, encode } from "fast-png";
import { CONTACT_PICTURES } from "./contact-pictures.ts";
import { endBrowser, openPage } from "./support.ts";

const ACROSS = 5;
const GAP = 8;

/** Pictures side by side on white, row by row. */
function sheetOf(files: readonly string[], size: number): Uint8Array {
  const width = ACROSS * (size + GAP) - GAP;
  const height = Math.ceil(files.length / ACROSS) * (size + GAP) - GAP;
  const data = new Uint8Array(3 * width * height).fill(255);
  files.forEach((file, k) => {
    const picture = decode(readFileSync(file));
    if (picture.width !== size) throw new Error(`${file} is ${picture.width} pixels across, not ${size}`);
    const [left, top] = [(k % ACROSS) * (size + GAP), Math.floor(k / ACROSS) * (size + GAP)];
    for (let i = 0; i < size * size; i++) {
      const to = 3 * ((top + Math.floor(i / size)) * width + left + (i % size));
      for (let c = 0; c < 3; c++) data[to + c] = picture.data[picture.channels * i + c];
    }
  });
  return encode({ width, height, data, channels: 3, depth: 8 });
}

const { positionals, values } = parseArgs({
  allowPositionals: true,
  options: {
    size: { type: "string", default: "420" },
    samples: { type: "string", default: "64" },
    only: { type: "string" },
  },
});
const [folder] = positionals;
const repository = fileURLToPath(new URL("../..", import.meta.url));
if (!folder || !relative(repository, resolve(folder)).startsWith(".."))
  throw new Error(
    "usage: npm run contact -- FOLDER [--size N] [--samples N] [--only 1,4]; the folder not in the repository",
  );
mkdirSync(folder, { recursive: true });
const [size, samples] = [Number(values.size), Number(values.samples)];
const files = CONTACT_PICTURES.map((_, k) => join(folder, `${String(k + 1).padStart(2, "0")}.png`));
const wanted = values.only?.split(",").map((n) => Number(n) - 1) ?? files.map((_, k) => k);
const { page } = await openPage("tests/browser/contact-page.html");
for (const k of wanted) {
  const began = performance.now();
  const address = await page.evaluate<string>(`contactPicture(${k}, ${size}, ${samples})`);
  writeFileSync(files[k], Buffer.from(address.slice(address.indexOf(",") + 1), "base64"));
  process.stdout.write(`${CONTACT_PICTURES[k].name}: ${((performance.now() - began) / 1000).toFixed(0)} s\n`);
}
if (files.every((file) => existsSync(file))) writeFileSync(join(folder, "sheet.png"), sheetOf(files, size));
await endBrowser();
