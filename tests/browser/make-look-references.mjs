/**
 * Makes the kept pictures anew, after the shared scenes or what the twin sees have changed: minutes of computing.
 * usage: node --import tsx tests/browser/make-look-references.mjs [SCENE]
 */
import { mkdirSync, writeFileSync } from "node:fs";
import { writePfm } from "../../src/core/optics/pfm.ts";
import {
  REFERENCE_SAMPLES,
  REFERENCE_SEEDS,
  REFERENCE_SIZE,
  referenceFile,
  twinPicture,
} from "./look-references.ts";
import { LOOK_SCENES } from "./look-scenes.ts";

const wanted = process.argv[2] ?? "";
for (const scene of LOOK_SCENES.filter(({ name }) => name.includes(wanted)))
  for (const seed of REFERENCE_SEEDS) {
    const file = referenceFile(scene, seed);
    mkdirSync(new URL(".", file), { recursive: true });
    writeFileSync(
      file,
      writePfm(REFERENCE_SIZE, REFERENCE_SIZE, twinPicture(scene, REFERENCE_SAMPLES, seed)),
    );
    console.log(scene.name, seed);
  }
