/**
 * The page that a customer gets: one file that stands alone. Its policy stands in it and lets nothing be asked for; its one script
 * and style are named by their hashes; every text of the plan is text.
 */
import { escapeXml } from "../models/escape-xml.ts";
import type { LightName } from "../optics/light-settings.ts";
import type { Maker, Plan } from "../plan/document.ts";
import type { ShownTable, ShowPiece } from "./show-piece.ts";
import { sizeOutline } from "./size-outline.ts";

/** Everything that is said in one language. `{}` in `turnedBy` stands for the number. */
export interface ShowSaid {
  readonly hint: string;
  readonly piece: string;
  readonly turnedBy: string;
  readonly turn: string;
  readonly stop: string;
  readonly light: string;
  readonly uncut: string;
  readonly size: string;
  readonly maker: string;
  readonly pictures: string;
  readonly stillOnly: string;
  readonly measured: string;
  readonly recipe: string;
  readonly recipeLines: readonly string[];
}

/** What the page's script reads. */
export interface ShowData {
  readonly piece: ShowPiece;
  readonly light: LightName;
  /** Missing: it is held in the hand. */
  readonly table?: ShownTable;
  /** All round about the vertical, evenly, from the front on: addresses that hold the picture themselves. */
  readonly pictures: readonly string[];
  readonly said: Readonly<Record<string, ShowSaid>>;
}

/** A script or style with the base64 of its SHA-256. */
export interface Hashed {
  readonly text: string;
  readonly sha256: string;
}

export interface ShowPage {
  readonly name: string;
  readonly diameterMm: number;
  readonly caption: string;
  readonly price: string;
  readonly maker: Maker | undefined;
  readonly data: ShowData;
  /** Shown before the light is traced, and where no script runs. */
  readonly still: string;
  readonly script: Hashed;
  readonly style: Hashed;
  /** Only with the recipe. */
  readonly plan: Plan | null;
}

const policy = (script: Hashed, style: Hashed): string =>
  [
    "default-src 'none'",
    `script-src 'sha256-${script.sha256}'`,
    `style-src 'sha256-${style.sha256}'`,
    "img-src data:",
    "font-src data:",
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");

/** JSON that can't end the element that it stands in, or begin another. */
const inScript = (value: unknown): string => JSON.stringify(value).replace(/</g, "\\u003c");

/** An element that is there only with something in it. */
const when = (text: string, html: (escaped: string) => string): string => (text ? html(escapeXml(text)) : "");

/** @throws RangeError for a script or style that would end its own element */
function mustHold({ text }: Hashed, element: string): string {
  if (text.toLowerCase().includes(`</${element}`)) throw new RangeError(`the ${element} would end itself`);
  return text;
}

/** What a recipe is: the plan without what concerns its maker alone, and without pictures, which the piece holds. */
export function recipeOf({
  offer: _offer,
  work: _work,
  pictures: _pictures,
  showing: _showing,
  ...recipe
}: Plan): Plan {
  return recipe;
}

const recipePart = ({ recipe, recipeLines }: ShowSaid): string =>
  recipeLines.length === 0
    ? ""
    : `<section class="recipe"><h2 data-say="recipe">${escapeXml(recipe)}</h2><ol id="recipe">${recipeLines
        .map((line) => `<li>${escapeXml(line)}</li>`)
        .join("")}</ol></section>`;

/** The page in English as it stands; its script says everything again in the reader's language. */
export function showPage(page: ShowPage): string {
  const { name, caption, price, maker, data, still, script, style, plan } = page;
  const said = data.said.en;
  const range = (id: string, label: string, min: number, max: number): string =>
    `<label class="slide"><span data-say="${id}">${escapeXml(label)}</span><input type="range" id="${id}" min="${min}" max="${max}" value="0" step="1"></label>`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy(script, style)}">
<meta name="referrer" content="no-referrer">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escapeXml(name)}</title>
<style>${mustHold(style, "style")}</style>
</head>
<body>
<main>
<div class="seen">
<div id="picture" tabindex="0" role="slider" aria-label="${escapeXml(said.piece)}" aria-valuemin="0" aria-valuemax="359" aria-valuenow="0"><img id="still" src="${still}" alt="${escapeXml(name)}" draggable="false"><canvas id="glass" hidden></canvas></div>
<p id="hint" data-say="hint">${escapeXml(said.hint)}</p>
<p id="made" class="soft" data-say="pictures" hidden>${escapeXml(said.pictures)}</p>
<noscript><p class="soft">${escapeXml(said.stillOnly)}</p></noscript>
<div id="controls" hidden><button type="button" id="turn">${escapeXml(said.turn)}</button><div id="traced">${range("light", said.light, -180, 180)}${range("uncut", said.uncut, 0, 100)}</div></div>
</div>
<div class="told">
<h1>${escapeXml(name)}</h1>
${when(said.maker, (text) => `<p class="maker" data-say="maker">${text}</p>`)}
${when(caption, (text) => `<p class="caption">${text}</p>`)}
${when(price, (text) => `<p class="price">${text}</p>`)}
<figure class="size">${sizeOutline(page.diameterMm)}<figcaption data-say="size">${escapeXml(said.size)}</figcaption></figure>
${recipePart(said)}
<p class="soft" data-say="measured">${escapeXml(said.measured)}</p>
${when(maker?.mark ?? "", (mark) => `<img class="mark" src="${mark}" alt="">`)}
</div>
</main>
<script type="application/json" id="data">${inScript(data)}</script>
${plan ? `<script type="application/json" id="plan">${inScript(plan)}</script>\n` : ""}<script>${mustHold(script, "script")}</script>
</body>
</html>
`;
}
