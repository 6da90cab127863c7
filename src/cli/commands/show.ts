/** `show PLAN.json --out show.html`: the page that a customer gets, one file that stands alone. */
import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { rastersOf } from "../../core/optics/decode-picture.ts";
import { LIGHT_SETTINGS, type LightName } from "../../core/optics/lights.ts";
import { solvePlan } from "../../core/plan/solve.ts";
import { fittedPage } from "../../core/show/fit-page.ts";
import { recipeOf, showPage } from "../../core/show/show-page.ts";
import { sceneOfShown, showPiece } from "../../core/show/show-piece.ts";
import { showSaid } from "../../words/show.ts";
import { mustBeWritable, writeOut } from "../files.ts";
import { languageIn, type Options } from "../options.ts";
import { printJson } from "../print.ts";
import { readPlan } from "../read-plan.ts";
import { numberOption } from "../render-options.ts";
import { bundleShow } from "../show-bundle.ts";
import { type ShowPictures, showPictures } from "../show-pictures.ts";
import { UsageError } from "../usage-error.ts";

function lightNamed(name: string): LightName {
  if (Object.hasOwn(LIGHT_SETTINGS, name)) return name as LightName;
  throw new UsageError(`--light must be ${Object.keys(LIGHT_SETTINGS).join(", ")}, not "${name}"`);
}

/** The project's folder: this file stands somewhere in it, bundled or not. */
function projectTop(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, "shaders")) && dirname(folder) !== folder) folder = dirname(folder);
  return folder;
}

const text = (value: Options[string]): string => (typeof value === "string" ? value.trim() : "");

export async function run([planPath]: readonly string[], options: Options): Promise<void> {
  const out = String(options.out);
  const light = lightNamed(typeof options.light === "string" ? options.light : "north-window");
  const allRound = {
    count: numberOption(options, "pictures", 24, { min: 1, max: 72, whole: true }),
    size: numberOption(options, "size", 240, { min: 16, max: 512, whole: true }),
  };
  const { plan } = await readPlan(planPath, languageIn(options));
  await mustBeWritable(out);
  const solved = solvePlan(plan);
  const piece = showPiece(solved, rastersOf(plan));
  const { script, style } = await bundleShow(projectTop());
  const scene = sceneOfShown(piece, { kind: "setting", setting: LIGHT_SETTINGS[light], turnRad: 0 });
  const recipe = options.withRecipe === true ? recipeOf(plan) : null;
  const own = { name: plan.name, caption: text(options.caption), price: text(options.price) };
  const pageWith = ({ first, allRound: pictures }: ShowPictures): string =>
    showPage({
      ...own,
      diameterMm: plan.piece.diameterMm,
      maker: plan.maker,
      data: { piece, light, pictures, said: showSaid(solved, recipe !== null) },
      still: first,
      script,
      style,
      plan: recipe,
    });
  // what is too large without any picture needs none traced
  await fittedPage(() => pageWith({ first: "", allRound: [] }));
  const picturesAt = await showPictures(scene, allRound, (done, of) =>
    process.stderr.write(`pictures: ${done} of ${of}\n`),
  );
  const page = await fittedPage((quality) => pageWith(picturesAt(quality)));
  await writeOut(out, page);
  await printJson({ wrote: out, bytes: Buffer.byteLength(page), scriptBytes: script.text.length });
}
