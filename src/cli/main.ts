/**
 * The engine without a browser. Prints nothing but the answer on standard output; a plan that can't be read ends with
 * one line on standard error and exit code 2. Each command is loaded only when asked for, so that all start quickly.
 */
import { Command } from "commander";
import type { Language } from "../words/language.ts";
import { languageIn } from "./options.ts";
import { print } from "./print.ts";
import { endingOf } from "./usage-error.ts";

/** A command's module: gets the plans' paths and its options; throws UsageError for a plan that can't be read. */
interface CommandModule {
  readonly run: (
    planPaths: readonly string[],
    options: Readonly<Record<string, string | boolean | undefined>>,
  ) => Promise<void>;
}

/** Help that was asked for, printed like any answer. */
const help: string[] = [];

const program = new Command("glintwright")
  .description("Plan the facets to be ground into a glass marble: exact geometry, look, bench.")
  .showHelpAfterError(false)
  .configureOutput({ writeOut: (text) => help.push(text) })
  .exitOverride();

type Options = Record<string, string | boolean | undefined>;

/** What every command understands. */
const LANG = ["--lang <code>", "language of texts: en or de"] as const;

function one(name: string, about: string, load: () => Promise<CommandModule>): Command {
  return program
    .command(name)
    .description(about)
    .argument("<plan>", "plan file (JSON)")
    .option(...LANG)
    .action(async (planPath: string, options: Options) => (await load()).run([planPath], options));
}

/** A question that is asked of several plans with one start. */
function many(name: string, about: string, load: () => Promise<CommandModule>): Command {
  return program
    .command(name)
    .description(`${about}; of several plans, a line each`)
    .argument("<plans...>", "plan files (JSON)")
    .option(...LANG)
    .action(async (planPaths: string[], options: Options) => (await load()).run(planPaths, options));
}

many(
  "report",
  "print facets, pairs, corners, totals and findings as one JSON object",
  () => import("./commands/report.ts"),
);
many("solve", "print the depth of every tier", () => import("./commands/solve.ts"));
many(
  "measure",
  "print how the piece looks and what it takes, as numbers",
  () => import("./commands/measure.ts"),
);
one(
  "bench",
  "print what the lap needs: rig settings, stages, strokes, order",
  () => import("./commands/bench.ts"),
);
one("fit", "print what was really cut, from the measurements in the plan", () => import("./commands/fit.ts"));
one(
  "offer",
  "print what the piece costs, from the plan's offer and the bench's minutes",
  () => import("./commands/offer.ts"),
).option("--json", "as one JSON object, amounts not rounded but the price");
one("sheet", "write the bench sheet", () => import("./commands/sheet.ts"))
  .requiredOption("--out <file>", "sheet.html")
  .option("--language <code>", "the same as --lang")
  .option("--unit <name>", "mm or inch")
  .option("--paper <size>", "a4 or letter");
one("export", "write a model or drawing", () => import("./commands/export.ts"))
  .requiredOption("--out <file>", "piece.stl, piece.3mf, piece.glb, piece.usdz or skin.svg")
  .option("--drawing <kind>", "for .svg: skin (the default, unrolled) or outlines (facets at true size)");
/** Where a piece lies. */
const onStage = (command: Command): Command =>
  command
    .option(
      "--stage <R,G,B>",
      "on a matt table of this reflectance, each 0 to 1, linear; or paper, linen, slate, oak",
    )
    .option(
      "--rest <side>",
      "how the piece lies on it: side (the default), back, front, ring or on a facet, tier/1",
    );

onStage(
  one(
    "show",
    "write the page that a customer gets: one file that stands alone",
    () => import("./commands/show.ts"),
  ),
)
  .requiredOption("--out <file>", "show.html")
  .option("--caption <text>", "stands under the name")
  .option("--price <text>", "shown as it is; without it no price")
  .option("--light <name>", "a light of ours")
  .option("--pictures <n>", "all round, for where light can't be traced, default 24")
  .option("--size <pixels>", "how wide those are, default 240")
  .option("--with-recipe", "with the plan: without, the page holds only planes as plain numbers");

/** What pictures have in common, however many there are. */
const pictures = (command: Command): Command =>
  onStage(command)
    .option("--size <pixels>", "width and height")
    .option("--samples <n>", "paths per pixel")
    .option("--light <name>", "a light of ours, an equirectangular .hdr file, or uniform")
    .option("--field <degrees>", "full vertical field of view")
    .option("--distance <mm>", "from the centre, default 10 radii")
    .option(
      "--aperture <f-number>",
      "of the lens, focused on the front of the piece; without it all is sharp",
    )
    .option("--bounces <n>", "cap on bounces")
    .option("--transparent", "without what is behind the piece; for .png")
    .option("--no-dispersion", "the d-line index for all light")
    .option("--seed <n>", "same seed, same file");

pictures(one("render", "trace a picture", () => import("./commands/render.ts")))
  .requiredOption("--out <file>", "look.png or look.pfm")
  .option("--from <direction>", "front, back, side or AZIMUTH,ELEVATION in degrees");
pictures(one("film", "trace the pictures of one full turn", () => import("./commands/film.ts")))
  .requiredOption("--out <folder>", "gets 0000.png, 0001.png ...; made where there is none")
  .option("--frames <n>", "pictures of the turn, default 72")
  .option("--elevation <degrees>", "so far above the level of the turn, default 15");

program
  .command("ideas")
  .description("try thousands of patterns for a wish and print the best of each kind")
  .argument("<wish>", "wish file (JSON)")
  .option("--tries <n>", "candidates to make, default 3000")
  .option("--seed <n>", "same seed, same ideas")
  .option("--threads <n>", "default: one for each processor; changes the time, never the answer")
  .option("--out <file>", "write the answer there instead of printing it")
  .action(async (path: string, options: Options) =>
    (await import("./commands/ideas.ts")).run([path], options),
  );

/** The language that the command at hand was asked to speak; English until it is known. */
let language: Language = "en";
program.hook("preAction", (_, command) => {
  language = languageIn(command.opts<Options>());
});

/** Ends with a word, or quietly; a fault of ours keeps its trace. */
function end(error: unknown): void {
  const ending = endingOf(error, language);
  if (ending === null) throw error;
  if (ending.line !== null) process.stderr.write(`${ending.line}\n`);
  process.exitCode = ending.status;
}

// A stream's fault is told by the write that meets it; without somebody who listens it would come as a trace besides.
for (const stream of [process.stdout, process.stderr]) stream.on("error", () => {});

program
  .command("photo")
  .description("put a photograph of the uncut ball into its plan, as what is inside")
  .argument("<picture>", "photograph (PNG or JPEG)")
  .requiredOption("--plan <file>", "plan of the ball (JSON)")
  .requiredOption("--circle <X,Y,R>", "the ball's outline, pixels from the photograph's top left corner")
  .requiredOption("--out <file>", "new plan (JSON)")
  .option("--distance <mm>", "camera from the ball's centre, default 10 radii")
  .option("--diameter <mm>", "default the largest that the glass shows")
  .option("--depth <mm>", "z of the picture in the piece's axes, default 0")
  .option("--shape <name>", "disc or core")
  .option("--side <name>", "front or back")
  .option(...LANG)
  .action(async (path: string, options: Options) =>
    (await import("./commands/photo.ts")).run([path], options),
  );

async function answer(): Promise<void> {
  try {
    await program.parseAsync();
  } catch (error) {
    const code = error instanceof Error && "code" in error ? String(error.code) : "";
    if (!code.startsWith("commander.")) throw error;
    // help that was asked for ends well; help that is shown because no command was given does not
    process.exitCode = error instanceof Error && "exitCode" in error && error.exitCode === 0 ? 0 : 2;
  }
  if (help.length > 0) await print(help.join(""));
}

await answer().catch(end);
