/**
 * Makes the kept pictures anew, after the shared scenes or what the twin or the shader sees have changed: minutes of computing.
 * usage: node --import tsx tests/browser/make-look-references.mjs [SCENE]
 */
import { mkdirSync, writeFileSync } from "node:fs";
import { writePfm } from "../../src/core/optics/pfm.ts";
import {
  CONVERGED_OF,
  CONVERGED_SAMPLES,
  convergedFile,
  REFERENCE_SAMPLES,
  REFERENCE_SEEDS,
  REFERENCE_SIZE,
  referenceFile,
  rowsFromTop,
  twinPicture,
} from "./look-references.ts";
import { ALL_SCENES, LOOK_SCENES, NOISY } from "./look-scenes.ts";
import { PLAIN_COUNT, PLAIN_SCENE, placesOnMap, plainFile } from "./plain-chance.ts";
import { ALL_SEEN, SEEN_SAMPLES, SEEN_SEED, seenFile, toKeep, twinParts } from "./seen-through.ts";
import { endBrowser, openPage } from "./support.ts";

const wanted = process.argv[2] ?? "";
const isWanted = ({ name }) => name.includes(wanted);

function keep(file, picture) {
  mkdirSync(new URL(".", file), { recursive: true });
  writeFileSync(file, writePfm(REFERENCE_SIZE, REFERENCE_SIZE, Float32Array.from(picture)));
  console.log(file.pathname);
}

for (const scene of LOOK_SCENES.filter(isWanted))
  for (const seed of REFERENCE_SEEDS)
    keep(referenceFile(scene, seed), twinPicture(scene, REFERENCE_SAMPLES, seed));

if (isWanted(PLAIN_SCENE)) {
  const gains = placesOnMap().map(({ gain }, i) => gain(PLAIN_COUNT, 1 + i));
  writeFileSync(plainFile, `${JSON.stringify(gains, null, 1)}\n`);
  console.log(plainFile.pathname);
}

if (ALL_SEEN.some(({ scene }) => isWanted({ name: scene }))) {
  const seen = ALL_SEEN.map((one) => toKeep(twinParts(one, SEEN_SAMPLES, SEEN_SEED)));
  writeFileSync(seenFile, `${JSON.stringify(seen)}\n`);
  console.log(seenFile.pathname);
}

const { page } = await openPage("tests/browser/look-page.html");
await page.waitForFunction("'traceScene' in window");
for (const scene of NOISY.filter(isWanted)) {
  const wish = { size: REFERENCE_SIZE, of: CONVERGED_OF, samples: CONVERGED_SAMPLES, own: false };
  const trace = async (seed) =>
    rowsFromTop(
      await page.evaluate(`traceScene(${ALL_SCENES.indexOf(scene)}, ${JSON.stringify({ ...wish, seed })})`),
    );
  const [one, other] = [await trace(REFERENCE_SEEDS[0]), await trace(REFERENCE_SEEDS[1])];
  keep(
    convergedFile(scene),
    one.map((v, i) => (v + other[i]) / 2),
  );
}
await endBrowser();
