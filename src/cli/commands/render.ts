/** `render`: traces a picture of a plan's piece and writes it as PNG or as linear PFM. */
import { directionOf } from "../../core/optics/camera.ts";
import { writePfm } from "../../core/optics/pfm.ts";
import { solvePlan } from "../../core/plan/solve.ts";
import { commandLineWords } from "../../words/command-line.ts";
import type { Language } from "../../words/language.ts";
import { mustBeWritable, writeOut } from "../files.ts";
import type { Options } from "../options.ts";
import { cameraFor, lightNamed, normalsOf, png, sceneFor, settingsOf } from "../pictures.ts";
import { readPlan } from "../read-plan.ts";
import { type RenderOptions, renderOptions } from "../render-options.ts";
import { renderPicture } from "../render-threads.ts";

/** Tenths as they are reached, on standard error only. */
function progress(): (share: number) => void {
  let told = 0;
  return (share) => {
    const tenths = Math.floor(share * 10 + 1e-9);
    if (tenths > told) process.stderr.write(`${tenths * 10} %\n`);
    told = Math.max(told, tenths);
  };
}

async function writePicture(options: RenderOptions, rows: Float32Array): Promise<void> {
  const { size, out, format } = options;
  await writeOut(out, format === "pfm" ? writePfm(size, size, rows) : png(options, rows));
}

export async function run([planPath]: readonly string[], given: Options, language: Language): Promise<void> {
  const { plan } = await readPlan(planPath);
  const radiusMm = plan.piece.diameterMm / 2;
  const options = renderOptions(given, radiusMm, () => normalsOf(solvePlan(plan)));
  // told before the tracing, not after: a picture can take an hour
  await mustBeWritable(options.out);
  const light = await lightNamed(options.light);
  const scene = sceneFor(solvePlan(plan), light, options);
  const towards = directionOf(options.azimuthDeg, options.elevationDeg);
  const camera = cameraFor(scene, towards, radiusMm, options, "--from");
  const { rows, lost } = await renderPicture({ scene, camera, settings: settingsOf(options) }, progress());
  const share = lost / (options.size ** 2 * options.samples);
  const words = commandLineWords(language).progress;
  if (share > 0) process.stderr.write(`${words.lost((100 * share).toPrecision(2))}\n`);
  await writePicture(options, rows);
}
