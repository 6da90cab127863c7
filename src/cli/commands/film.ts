/**
 * `film PLAN.json --out FOLDER`: the pictures of one full turn of the view about the vertical, each what `render` makes from there.
 * Counter-clockwise seen from above, from the usual view on, the last one step before the first, so that they loop.
 */
import { mkdir, readdir, stat } from "node:fs/promises";
import { dirname, join, resolve } from "node:path";
import type { Vec3 } from "../../core/geometry/vec.ts";
import { directionOf, turnAbout } from "../../core/optics/camera.ts";
import { solvePlan } from "../../core/plan/solve.ts";
import { type CommandLineWords, commandLineWords } from "../../words/command-line.ts";
import type { Language } from "../../words/language.ts";
import { writeOut } from "../files.ts";
import { numberOption } from "../number-option.ts";
import type { Options } from "../options.ts";
import { cameraFor, lightNamed, normalsOf, png, sceneFor, settingsOf } from "../pictures.ts";
import { printJson } from "../print.ts";
import { readPlan } from "../read-plan.ts";
import { renderOptions } from "../render-options.ts";
import { renderPicture } from "../render-threads.ts";
import { systemCode, systemSaid } from "../system-fault.ts";
import { type Said, UsageError } from "../usage-error.ts";

/** Four digits number the pictures. */
const MOST_FRAMES = 9999;
const DEFAULT_FRAMES = 72;
/** So far above the level of the turn, degrees. */
const DEFAULT_ELEVATION = 15;
/** Up in pictures without a table. */
const PLAIN_UP: Vec3 = [0, 1, 0];

const nameOf = (frame: number): string => `${String(frame).padStart(4, "0")}.png`;

/**
 * Makes a folder and those it lies in, each asked for twice at most: Node's own recursive way never ends where the system
 * takes no folder, as under /proc.
 * @param folder absolute
 */
async function makeFolders(folder: string): Promise<void> {
  try {
    await mkdir(folder);
  } catch (error) {
    const code = systemCode(error);
    if (code === "EEXIST") return;
    const above = dirname(folder);
    if (code !== "ENOENT" || above === folder) throw error;
    await makeFolders(above);
    await mkdir(folder);
  }
}

/** Makes the folder where there is none. Pictures of a longer film would stay among those of this one: such a folder is refused. */
async function openFolder(folder: string, frames: number): Promise<void> {
  const refused = (why: Said) =>
    new UsageError((words, language) => `${words.files.cantWriteTo(folder)}: ${why(words, language)}`);
  const place = resolve(folder);
  let names: readonly string[] = [];
  try {
    if ((await stat(place).catch(() => null))?.isFile()) throw refused(({ files }) => files.noFolder);
    await makeFolders(place);
    names = await readdir(place);
  } catch (error) {
    const why = systemSaid(error);
    throw why === null ? error : refused(why);
  }
  const left = names.find((name) => /^\d{4}\.png$/.test(name) && Number(name.slice(0, 4)) >= frames);
  if (left) throw refused(({ files }) => files.longerFilm(left));
}

/** Says after each picture how many are done and about how long the others take, on standard error. */
function progress(frames: number, words: CommandLineWords["progress"]): (done: number) => void {
  const begun = Date.now();
  return (done) => {
    const left = (((Date.now() - begun) / done) * (frames - done)) / 1000;
    const time = left < 90 ? `${Math.ceil(left)} s` : `${Math.ceil(left / 60)} min`;
    const all = String(frames);
    const said = done < frames ? words.framesLeft(String(done), all, time) : words.frames(all, all);
    process.stderr.write(`${said}\n`);
  };
}

/** @throws UsageError for options that can't be used, a folder that can't be written, a camera below the table */
export async function run([planPath]: readonly string[], given: Options, language: Language): Promise<void> {
  const { plan } = await readPlan(planPath);
  const solved = solvePlan(plan);
  const folder = String(given.out);
  const options = renderOptions({ ...given, out: nameOf(0) }, solved.radiusMm, () => normalsOf(solved));
  const frames = numberOption(given, "frames", DEFAULT_FRAMES, { min: 1, max: MOST_FRAMES, whole: true });
  const elevation = numberOption(given, "elevation", DEFAULT_ELEVATION, { min: -90, max: 90, open: true });
  const scene = sceneFor(solved, await lightNamed(options.light), options);
  const usual = directionOf(options.azimuthDeg, options.elevationDeg);
  const cameras = turnAbout(scene.tabletop?.up ?? PLAIN_UP, usual, elevation, frames).map((towards) =>
    cameraFor(scene, towards, solved.radiusMm, options, "--elevation"),
  );
  await openFolder(folder, frames);
  const tell = progress(frames, commandLineWords(language).progress);
  for (const [frame, camera] of cameras.entries()) {
    const { rows } = await renderPicture({ scene, camera, settings: settingsOf(options) }, () => {});
    await writeOut(join(folder, nameOf(frame)), png(options, rows));
    tell(frame + 1);
  }
  await printJson({ wrote: folder, frames, size: options.size, first: nameOf(0), last: nameOf(frames - 1) });
}
