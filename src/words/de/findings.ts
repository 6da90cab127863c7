/** Was Befunde sagen, nach ihrem Code. */

import type { PlanFindingData } from "../../core/plan/finding.ts";
import type { CauseWords, FindingWords, MendedWords } from "../findings.ts";
import { namedWheels, usableCounts } from "../lists.ts";
import { reasonInWords, wishInWords } from "../reasons.ts";
import type { Say } from "../say.ts";
import { counted, plural } from "./counted.ts";
import { reasons } from "./reasons.ts";
import { rules } from "./rules.ts";

type Some = readonly string[] | undefined;
const facetsOf = (some: Some): string => counted.facets(some?.length ?? 0);
/** Ein Wort, das mit der Zahl der Facetten geht. */
const by = (some: Some, one: string, other: string): string => plural(some?.length ?? 0, { one, other });

/** "12 Ecken und 1 Paar Nachbarinnen treffen sich nicht mehr und verfehlen sich um bis zu 0,31 mm" */
const lost = (data: PlanFindingData["edit-splits"], say: Say): string => {
  const pairs = plural(data.pairs, { one: "1 Paar Nachbarinnen", other: `${data.pairs} Paare Nachbarinnen` });
  const what = [data.corners === 0 ? "" : counted.corners(data.corners), data.pairs === 0 ? "" : pairs];
  const meet = plural(data.corners + data.pairs, {
    one: "trifft sich nicht mehr und verfehlt sich",
    other: "treffen sich nicht mehr und verfehlen sich",
  });
  return `${what.filter((part) => part !== "").join(" und ")} ${meet} um bis zu ${say.length(data.missMm)}`;
};

export const findings: FindingWords = {
  "rule-unmet": ({ data }, say) =>
    `Sie kann nicht ${wishInWords(data, rules, say)}: ${reasonInWords(data, reasons, say)}. ${
      data.depthMm > 0
        ? `Gezeichnet ist sie mit ${say.fine(data.depthMm)} Tiefe.`
        : "Sie behält Winkel und Regel und wird nicht geschliffen."
    }`,
  overshoot: ({ data, facets: some }, say) =>
    `${facetsOf(some)} ${by(some, "geht", "gehen")} bis zu ${say.length(data.worstMm)} über ihre Ecke hinaus: Nicht alle Ecken liegen gleich tief.`,
  uneven: ({ data }, say) =>
    `${data.count} Facetten gehen auf einem Rad mit ${data.stops} Rasten nicht auf: Sie stehen bis zu ${say.degrees(data.errorDeg)} daneben, das ändert Lücken um ${say.length(data.gapMm)}. Dieses Rad kann ${usableCounts(data.counts)}.`,
  "start-moved": ({ data }, say) =>
    `Sie beginnt zwischen zwei Rasten: Das Rad setzt sie ${say.degrees(Math.abs(data.movedDeg), 2)} ${data.movedDeg < 0 ? "zurück" : "weiter"}, bei ${say.degrees(data.placedDeg, 2)}.`,
  "wheel-splits": ({ data, tier }, say) => {
    const stop = data.startDeg === null || tier === undefined ? null : say.stop(tier, data.startDeg);
    return [
      `Die Rasten des Rads versetzen sie um ${say.degrees(data.movedDeg, 2)}: ${lost(data, say)}.`,
      stop === null ? "" : `Bei Raste ${stop} begonnen trifft sich alles.`,
      data.wheels.length > 0
        ? `Auf einem Rad mit ${namedWheels(data.wheels)} Rasten trifft sich alles.`
        : "Kein Rad hat an allen diesen Stellen Rasten.",
    ]
      .filter((said) => said !== "")
      .join(" ");
  },
  "edit-splits": ({ data }, say) => `Seit der letzten Änderung: ${lost(data, say)}.`,
  duplicate: ({ data }, say) =>
    data.count > 1
      ? `${data.count} Facetten sind genau dieselben Flächen wie in ${say.tier(data.other)}, die bleiben.`
      : `${say.facet(data.swallowed)} ist genau dieselbe Fläche wie ${say.facet(data.keeps)}, die bleibt.`,
  "near-duplicate": ({ data, facets: some }, say) =>
    data.count > 1
      ? `${data.count} Flächen von ${say.tier(data.other)} werden hier ein zweites Mal geschliffen, höchstens ${say.degrees(data.apartDeg)} und ${say.length(data.apartMm)} daneben.`
      : `${say.facet(some?.[1] ?? "")} und ${say.facet(some?.[0] ?? "")} sind eine Fläche, zweimal geschliffen: ${say.degrees(data.apartDeg)} und ${say.length(data.apartMm)} auseinander.`,
  swallowed: ({ data, facets: some }, say) =>
    say.isNothing(data.neededMm - data.depthMm)
      ? `Bei ${say.length(data.depthMm)} ${by(some, "berührt", "berühren")} ${facetsOf(some)} das Glas nur und ${by(some, "nimmt", "nehmen")} nichts weg.`
      : `${facetsOf(some)} ${by(some, "trifft", "treffen")} bei ${say.length(data.depthMm)} kein Glas: Es beginnt dort ${say.length(data.neededMm)} unter der runden Oberfläche.`,
  lost: ({ data, facets: some }, say) =>
    `${facetsOf(some)} ${by(some, "wird", "werden")} von ${data.by.map(say.tier).join(", ")} wieder weggeschliffen.`,
  sliver: ({ data, facets: some }, say) =>
    `${facetsOf(some)} ${by(some, "ist nur ein", "sind nur")} Splitter, mindestens ${say.length(data.leastMm)}: dünner als die zugelassenen ${say.length(data.toleranceMm)}.`,
  "near-miss": ({ data }, say) =>
    `${counted.corners(data.count)} ${plural(data.count, { one: "kommt", other: "kommen" })} fast auf einen Punkt, ${plural(data.count, { one: "verfehlt", other: "verfehlen" })} ihn aber um ${say.length(data.missMm)}.`,
  "corners-left": ({ data }, say) =>
    `${data.count} der ${data.all} Ecken von ${say.tier(data.of)} ${plural(data.count, { one: "bleibt", other: "bleiben" })} aus, um bis zu ${say.length(data.missMm)}: Die Zahl der Facetten passt nicht dazu.`,
  "short-edge": ({ data }, say) =>
    `${counted.edges(data.count)} ${plural(data.count, { one: "ist", other: "sind" })} ${say.length(data.longestMm)} lang oder kürzer und ${plural(data.count, { one: "sieht wie ein Punkt", other: "sehen wie Punkte" })} aus.`,
  "skin-between": ({ data, tier }, say) => {
    const other = data.tiers.find((id) => id !== tier) ?? data.tiers[0];
    const [least, most] = [say.length(data.leastMm), say.length(data.mostMm)];
    return `Zu ${say.tier(other)} hin bleibt runde Haut, ${least === most ? least : `${least} bis ${most}`} breit.`;
  },
  "under-dop": ({ data, facets: some }, say) =>
    `${facetsOf(some)} ${by(some, "läuft", "laufen")} ${say.length(data.byMm)} unter den Kittstock. ${say.isNothing(data.fitsMm) ? "Da kommt keiner frei." : `Einer von ${say.length(data.fitsMm)} käme gerade frei.`}`,
  "inside-broken": ({ data }, say) =>
    `Sie bricht ${say.length(-data.leastMm)} in das Innere ein. Mit ${say.length(data.depthThatClearsMm)} Tiefe bleibt sie frei.`,
  "inside-thin": ({ data }, say) =>
    `Nur ${say.length(data.leastMm)} Glas bleiben über dem Inneren. Mit ${say.length(data.depthThatClearsMm)} Tiefe ist es genug.`,
  "inside-outside": ({ data }, say) =>
    `Das Innere ragt ${say.length(data.byMm)} aus dem Glas: Was draußen liegt, ist nicht da.`,
  "picture-missing": ({ data }) =>
    `Das Innere zeigt das Bild „${data.picture}“, aber es kam nicht mit dem Plan mit (Links tragen keine Bilder). Dort ist nichts zu sehen, bis es eines bekommt.`,
  vanished: () => "Vom Stück bleibt nichts: Manche Facetten sind tiefer geschliffen, als das Glas dick ist.",
};

/** Dasselbe in wenigen Worten, als das, was dem Stück im Weg steht. */
export const causes: CauseWords = {
  "rule-unmet": (tier) => `${tier} kann nicht, was verlangt ist`,
  vanished: () => "vom Stück bleibt nichts übrig",
  "under-dop": (tier) => `${tier} reicht unter den Kittstock`,
  "inside-broken": (tier) => `${tier} bricht in das Innere`,
  "inside-thin": (tier) => `${tier} lässt wenig Glas über dem Inneren`,
  uneven: (tier) => `${tier} geht auf diesem Rad nicht auf`,
  duplicate: (tier) => `${tier} schleift dieselben Flächen noch einmal`,
  "near-duplicate": (tier) => `${tier} schleift dieselben Flächen noch einmal`,
  swallowed: (tier) => `${tier} erreicht nicht überall Glas`,
  lost: (tier) => `Facetten von ${tier} werden wieder weggeschliffen`,
  sliver: (tier) => `${tier} hat Splitterflächen`,
  overshoot: (tier) => `${tier} geht über ihre Ecken hinaus`,
  "start-moved": (tier) => `${tier} beginnt zwischen zwei Rasten`,
  "wheel-splits": (tier) => `${tier} wird vom Rad versetzt`,
  "edit-splits": (tier) => `${tier} trifft nicht mehr wie vorher`,
  "near-miss": (tier) => `${tier} verfehlt ihre Ecken knapp`,
  "corners-left": (tier) => `${tier} lässt Ecken aus`,
  "short-edge": (tier) => `${tier} hat sehr kurze Kanten`,
  "skin-between": (tier) => `neben ${tier} bleibt runde Haut`,
  "inside-outside": () => "das Innere ragt aus dem Glas",
  "picture-missing": () => "dem Inneren fehlt das Bild, das es zeigt",
};

/** Was gewonnen ist, wenn es behoben ist. */
export const mended: MendedWords = {
  "rule-unmet": "so geht es",
  uneven: "das Rad teilt es gleichmäßig",
  "start-moved": "es steht auf einer Raste",
  "wheel-splits": "alles trifft sich wieder",
  "edit-splits": "was sich traf, trifft sich wieder",
  duplicate: "keine Fläche wird zweimal geschliffen",
  "near-duplicate": "keine Fläche wird zweimal geschliffen",
  overshoot: "keine Facette läuft über ihre Ecke",
  swallowed: "jede Facette ist zu sehen",
  lost: "jede Facette bleibt",
  sliver: "es bleiben keine Splitter",
  "short-edge": "es bleiben keine kurzen Kanten",
  "near-miss": "die Ecken kommen auf einen Punkt",
  "corners-left": "jede Ecke wird getroffen",
  "skin-between": "das Band schließt sich",
  "under-dop": "es bleibt frei vom Kittstock",
  "inside-broken": "das Motiv innen bleibt ganz",
  "inside-thin": "über dem Motiv bleibt genug Glas",
  vanished: "es bleibt Glas übrig",
  "inside-outside": "das Innere liegt im Glas",
  "picture-missing": "das Bild ist zu sehen",
};
