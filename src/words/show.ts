/** What a customer's page says in each language, filled in for one piece. */

import type { Plan } from "../core/plan/document.ts";
import type { SolvedPlan } from "../core/plan/solved.ts";
import type { ShowSaid } from "../core/show/show-page.ts";
import { besideWhat, sizeTexts } from "../core/show/size-outline.ts";
import { show as de } from "./de/show.ts";
import { show as en } from "./en/show.ts";
import { dictionary, type Language, pluralIn } from "./language.ts";
import { tierNameAt } from "./names.ts";

const WORDS = dictionary(en, de);

const numberIn =
  (language: Language) =>
  (value: number, digits = 1): string =>
    new Intl.NumberFormat(language, { maximumFractionDigits: digits, useGrouping: false }).format(value);

/** One line a tier, in cutting order. */
function recipeIn({ plan, tiers: solved }: SolvedPlan, language: Language): string[] {
  const words = WORDS[language];
  const number = numberIn(language);
  return plan.tiers.map(({ count, side, armAngleDeg, startDeg }, i) =>
    words.recipeFacets(
      tierNameAt(plan, i, language),
      pluralIn(language)(count, { one: words.facets.one, other: words.facets.other(number(count)) }),
      words[side],
      number(armAngleDeg, 2),
      number(startDeg, 2),
      number(solved[i].depthMm, 2),
    ),
  );
}

function saidIn(
  { piece, name, maker }: ShownPlan,
  recipeLines: readonly string[],
  language: Language,
): ShowSaid {
  const words = WORDS[language];
  const { mm, inch } = sizeTexts(piece.diameterMm);
  const own = (text: string): string => (language === "de" ? text.replace(".", ",") : text);
  return {
    hint: words.hint,
    piece: words.piece(name),
    turnedBy: words.turnedBy("{}"),
    turn: words.turn,
    stop: words.stop,
    light: words.light,
    uncut: words.uncut,
    size: words[besideWhat(piece.diameterMm)](own(mm), own(inch)),
    maker: maker?.name ? words.by(maker.name) : "",
    pictures: words.pictures,
    stillOnly: words.stillOnly,
    measured: words.measured,
    recipe: words.recipe,
    recipeLines,
  };
}

type ShownPlan = Pick<Plan, "piece" | "name" | "maker">;

export const showSaid = (solved: SolvedPlan, withRecipe: boolean): Readonly<Record<Language, ShowSaid>> => ({
  en: saidIn(solved.plan, withRecipe ? recipeIn(solved, "en") : [], "en"),
  de: saidIn(solved.plan, withRecipe ? recipeIn(solved, "de") : [], "de"),
});

/** For a page opened from a link: a drawing stands where a file has pictures, and no recipe is there. */
export const linkSaid = (plan: ShownPlan): Readonly<Record<Language, ShowSaid>> => ({
  en: { ...saidIn(plan, [], "en"), pictures: WORDS.en.drawing },
  de: { ...saidIn(plan, [], "de"), pictures: WORDS.de.drawing },
});
