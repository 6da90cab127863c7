/** `show PLAN.json --out show.html`: the page that a customer gets, one file that stands alone. */
import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { supportOf } from "../../core/check/size.ts";
import { cutBall } from "../../core/geometry/solid.ts";
import { scale } from "../../core/geometry/vec.ts";
import { rastersOf } from "../../core/optics/decode-picture.ts";
import { LIGHT_NAMES, LIGHT_SETTINGS, type LightName } from "../../core/optics/light-settings.ts";
import { solvePlan } from "../../core/plan/solve.ts";
import type { SolvedPlan } from "../../core/plan/solved.ts";
import { fittedPage } from "../../core/show/fit-page.ts";
import { recipeOf, showPage } from "../../core/show/show-page.ts";
import { layDown, type ShownTable, sceneOfShown, showPiece } from "../../core/show/show-piece.ts";
import { commandLineWords } from "../../words/command-line.ts";
import type { Language } from "../../words/language.ts";
import { showSaid } from "../../words/show.ts";
import { mustBeWritable, writeOut } from "../files.ts";
import { numberOption } from "../number-option.ts";
import type { Options } from "../options.ts";
import { normalsOf } from "../pictures.ts";
import { printJson } from "../print.ts";
import { readPlan } from "../read-plan.ts";
import { type RenderOptions, tableOption } from "../render-options.ts";
import { bundleShow } from "../show-bundle.ts";
import { type ShowPictures, showPictures } from "../show-pictures.ts";
import { UsageError } from "../usage-error.ts";

function lightNamed(name: string): LightName {
  if (Object.hasOwn(LIGHT_SETTINGS, name)) return name as LightName;
  throw new UsageError(({ refused }) => refused.oneOf("light", LIGHT_NAMES.join(", "), name));
}

/** The project's folder: this file stands somewhere in it, bundled or not. */
function projectTop(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, "shaders")) && dirname(folder) !== folder) folder = dirname(folder);
  return folder;
}

function tableUnder(
  { planes, radiusMm }: SolvedPlan,
  { material, rest }: NonNullable<RenderOptions["table"]>,
): ShownTable {
  const { down, onRing = false } = rest;
  return { material, radiusMm, up: scale(down, -1), floor: -supportOf(cutBall(planes), down), onRing };
}

/** What was said, or else what the plan says. */
const text = (value: Options[string], planned = ""): string =>
  (typeof value === "string" ? value : planned).trim();

export async function run(
  [planPath]: readonly string[],
  options: Options,
  language: Language,
): Promise<void> {
  const out = String(options.out);
  const light = lightNamed(typeof options.light === "string" ? options.light : "north-window");
  const allRound = {
    count: numberOption(options, "pictures", 24, { min: 1, max: 72, whole: true }),
    size: numberOption(options, "size", 240, { min: 16, max: 512, whole: true }),
  };
  const { plan } = await readPlan(planPath);
  await mustBeWritable(out);
  const solved = solvePlan(plan);
  const piece = showPiece(solved, rastersOf(plan));
  const asked = tableOption(options, () => normalsOf(solved));
  const table = asked ? tableUnder(solved, asked) : undefined;
  const { script, style } = await bundleShow(projectTop());
  const lit = { kind: "setting", setting: LIGHT_SETTINGS[light], turnRad: 0 } as const;
  const scene = layDown(sceneOfShown(piece, lit), table);
  const recipe = options.withRecipe === true ? recipeOf(plan) : null;
  const { name, showing } = plan;
  const own = {
    name,
    caption: text(options.caption, showing?.caption),
    price: text(options.price, showing?.price),
  };
  const pageWith = ({ first, allRound: pictures }: ShowPictures): string =>
    showPage({
      ...own,
      diameterMm: plan.piece.diameterMm,
      maker: plan.maker,
      data: { piece, light, ...(table && { table }), pictures, said: showSaid(solved, recipe !== null) },
      still: first,
      script,
      style,
      plan: recipe,
    });
  // what is too large without any picture needs none traced
  await fittedPage(() => pageWith({ first: "", allRound: [] }));
  const { progress } = commandLineWords(language);
  const picturesAt = await showPictures(scene, allRound, (done, of) =>
    process.stderr.write(`${progress.pictures(String(done), String(of))}\n`),
  );
  const page = await fittedPage((quality) => pageWith(picturesAt(quality)));
  await writeOut(out, page);
  await printJson({ wrote: out, bytes: Buffer.byteLength(page), scriptBytes: script.text.length });
}
