/**
 * Every command with its arguments and options, in one language. Commands are loaded only when asked for, so that all start
 * quickly.
 */
import { Command, type CommanderError } from "commander";
import { type CommandLineWords, commandLineWords } from "../words/command-line.ts";
import type { Language } from "../words/language.ts";
import type { Options } from "./options.ts";

/** A command's module: gets the files named and its options; throws UsageError for what can't be used. */
interface CommandModule {
  readonly run: (paths: readonly string[], options: Options, language: Language) => Promise<void>;
}

/** Adds a command that is asked of one file, or of several. */
type Add = (name: string, about: string, argument: Argument, load: () => Promise<CommandModule>) => Command;
/** As it stands in the help, and what it is. */
type Argument = readonly [name: string, about: string];

function addTo(program: Command, language: Language): Add {
  return (name, about, argument, load) =>
    program
      .command(name)
      .description(about)
      .argument(...argument)
      .action(async (paths: string | readonly string[], options: Options) =>
        (await load()).run([paths].flat(), options, language),
      );
}

/** Questions that are asked of several plans with one start, and those asked of one. */
function addQuestions(add: Add, { commands, arguments: names, options, values }: CommandLineWords): void {
  const plan = [`<${names.plan}>`, names.aboutPlan] as const;
  const plans = [`<${names.plans}...>`, names.aboutPlans] as const;
  add("report", commands.several(commands.report), plans, () => import("./commands/report.ts"));
  add("solve", commands.several(commands.solve), plans, () => import("./commands/solve.ts"));
  add("measure", commands.several(commands.measure), plans, () => import("./commands/measure.ts"));
  add("bench", commands.bench, plan, () => import("./commands/bench.ts"));
  add("fit", commands.fit, plan, () => import("./commands/fit.ts"));
  add("offer", commands.offer, plan, () => import("./commands/offer.ts")).option("--json", options.asJson);
  add("sheet", commands.sheet, plan, () => import("./commands/sheet.ts"))
    .requiredOption(`--out <${values.file}>`, options.sheetOut)
    .option(`--language <${values.code}>`, options.language)
    .option(`--unit <${values.name}>`, options.unit)
    .option(`--paper <${values.size}>`, options.paper);
  add("export", commands.export, plan, () => import("./commands/export.ts"))
    .requiredOption(`--out <${values.file}>`, options.exportOut)
    .option(`--drawing <${values.kind}>`, options.drawing);
}

/** Where a piece lies. */
const onStage = (command: Command, { options, values }: CommandLineWords): Command =>
  command.option("--stage <R,G,B>", options.stage).option(`--rest <${values.side}>`, options.rest);

/** What pictures have in common, however many there are. */
const pictured = (command: Command, words: CommandLineWords): Command => {
  const { options, values } = words;
  return onStage(command, words)
    .option(`--size <${values.pixels}>`, options.size)
    .option(`--samples <${values.n}>`, options.samples)
    .option(`--light <${values.name}>`, options.light)
    .option(`--field <${values.degrees}>`, options.field)
    .option("--distance <mm>", options.distance)
    .option(`--aperture <${values.fNumber}>`, options.aperture)
    .option(`--bounces <${values.n}>`, options.bounces)
    .option("--transparent", options.transparent)
    .option("--no-dispersion", options.noDispersion)
    .option(`--seed <${values.n}>`, options.seed);
};

function addPictures(add: Add, words: CommandLineWords): void {
  const { commands, arguments: names, options, values } = words;
  const plan = [`<${names.plan}>`, names.aboutPlan] as const;
  onStage(
    add("show", commands.show, plan, () => import("./commands/show.ts")),
    words,
  )
    .requiredOption(`--out <${values.file}>`, options.showOut)
    .option(`--caption <${values.text}>`, options.caption)
    .option(`--price <${values.text}>`, options.price)
    .option(`--light <${values.name}>`, options.ownLight)
    .option(`--pictures <${values.n}>`, options.pictures)
    .option(`--size <${values.pixels}>`, options.picturesSize)
    .option("--with-recipe", options.withRecipe);
  pictured(
    add("render", commands.render, plan, () => import("./commands/render.ts")),
    words,
  )
    .requiredOption(`--out <${values.file}>`, options.renderOut)
    .option(`--from <${values.direction}>`, options.from);
  pictured(
    add("film", commands.film, plan, () => import("./commands/film.ts")),
    words,
  )
    .requiredOption(`--out <${values.folder}>`, options.filmOut)
    .option(`--frames <${values.n}>`, options.frames)
    .option(`--elevation <${values.degrees}>`, options.elevation);
}

function addMakers(add: Add, { commands, arguments: names, options, values }: CommandLineWords): void {
  const wish = [`<${names.wish}>`, names.aboutWish] as const;
  add("ideas", commands.ideas, wish, () => import("./commands/ideas.ts"))
    .option(`--tries <${values.n}>`, options.tries)
    .option(`--seed <${values.n}>`, options.ideasSeed)
    .option(`--threads <${values.n}>`, options.threads)
    .option(`--out <${values.file}>`, options.ideasOut);
  const picture = [`<${names.picture}>`, names.aboutPicture] as const;
  add("photo", commands.photo, picture, () => import("./commands/photo.ts"))
    .requiredOption(`--plan <${values.file}>`, options.plan)
    .requiredOption("--circle <X,Y,R>", options.circle)
    .requiredOption(`--out <${values.file}>`, options.photoOut)
    .option("--distance <mm>", options.cameraDistance)
    .option("--diameter <mm>", options.diameter)
    .option("--depth <mm>", options.depth)
    .option(`--shape <${values.name}>`, options.shape)
    .option(`--side <${values.name}>`, options.photoSide);
}

/**
 * The commands, with errors thrown instead of told.
 * @param onHelp gets help that was asked for
 */
export function programIn(language: Language, onHelp: (text: string) => void): Command {
  const words = commandLineWords(language);
  const { help, values, options } = words;
  const inWords = (part: string): string => (help.parts as Readonly<Record<string, string>>)[part] ?? part;
  const marksInWords = (term: string): string => term.replace(/\[[a-z]+\]/g, inWords);
  const program = new Command("glintwright")
    .description(words.about)
    .option(`--lang <${values.code}>`, options.lang)
    .helpOption("-h, --help", help.ofCommand)
    .helpCommand(help.named, help.ofNamed)
    .configureHelp({
      showGlobalOptions: true,
      styleTitle: inWords,
      styleUsage: marksInWords,
      styleSubcommandTerm: marksInWords,
    })
    .configureOutput({ writeOut: onHelp, outputError: () => {} })
    .exitOverride();
  const add = addTo(program, language);
  addQuestions(add, words);
  addPictures(add, words);
  addMakers(add, words);
  return program;
}

/** What the library calls an error of parsing, and which sentence tells it. */
const PARSING = {
  "commander.missingArgument": "missingArgument",
  "commander.optionMissingArgument": "missingValue",
  "commander.missingMandatoryOptionValue": "missingOption",
  "commander.unknownOption": "unknownOption",
  "commander.unknownCommand": "unknownCommand",
} as const;
const SUGGESTED = /\s*\(Did you mean (?:one of )?([^?]+)\?\)$/;

/** What the library says of arguments that it can't parse, in words of a language; it names what it speaks of in quotes. */
export function parsingLine({ code, message }: CommanderError, language: Language): string {
  const { parsing } = commandLineWords(language);
  if (code === "commander.excessArguments") return parsing.tooMany(/got (\d+)/.exec(message)?.[1] ?? "");
  if (!Object.hasOwn(PARSING, code)) return message;
  const named = /'(.*)'/s.exec(message.replace(SUGGESTED, ""))?.[1] ?? "";
  const line = parsing[PARSING[code as keyof typeof PARSING]](named);
  const suggested = SUGGESTED.exec(message)?.[1].replace(/, (?=[^,]+$)/, ` ${parsing.or} `);
  return suggested ? `${line} (${parsing.didYouMean(suggested)})` : line;
}
