/** Was Befunde sagen, nach ihrem Code. */
import type { FindingWords } from "../findings.ts";
import { pluralIn } from "../language.ts";
import { namedWheels, usableCounts } from "../lists.ts";
import { reasonInWords, wishInWords } from "../reasons.ts";
import { reasons } from "./reasons.ts";
import { rules } from "./rules.ts";

const plural = pluralIn("de");
type Some = readonly string[] | undefined;
const facets = (some: Some): string => {
  const count = some?.length ?? 0;
  return plural(count, { one: "1 Facette", other: `${count} Facetten` });
};
const corners = (count: number): string => plural(count, { one: "1 Ecke", other: `${count} Ecken` });
const edges = (count: number): string => plural(count, { one: "1 Kante", other: `${count} Kanten` });
/** Ein Wort, das mit der Zahl der Facetten geht. */
const by = (some: Some, one: string, other: string): string => plural(some?.length ?? 0, { one, other });

export const findings: FindingWords = {
  "rule-unmet": ({ data }, say) =>
    `Sie kann nicht ${wishInWords(data, rules, say)}: ${reasonInWords(data, reasons, say)}. ${
      data.depthMm > 0
        ? `Gezeichnet ist sie mit ${say.fine(data.depthMm)} Tiefe.`
        : "Sie behält Winkel und Regel und wird nicht geschliffen."
    }`,
  overshoot: ({ data, facets: some }, say) =>
    `${facets(some)} ${by(some, "geht", "gehen")} bis zu ${say.length(data.worstMm)} über ihre Ecke hinaus: Nicht alle Ecken liegen gleich tief.`,
  uneven: ({ data }, say) =>
    `${data.count} Facetten gehen auf einem Rad mit ${data.stops} Rasten nicht auf: Sie stehen bis zu ${say.degrees(data.errorDeg)} daneben, das ändert Lücken um ${say.length(data.gapMm)}. Dieses Rad kann ${usableCounts(data.counts)}.`,
  "start-moved": ({ data }, say) =>
    `Sie beginnt zwischen zwei Rasten: Das Rad setzt sie ${say.degrees(Math.abs(data.movedDeg), 2)} ${data.movedDeg < 0 ? "zurück" : "weiter"}, bei ${say.degrees(data.placedDeg, 2)}.`,
  "wheel-splits": ({ data, tier }, say) => {
    const what = [
      data.corners === 0 ? "" : corners(data.corners),
      data.pairs === 0
        ? ""
        : plural(data.pairs, { one: "1 Paar Nachbarinnen", other: `${data.pairs} Paare Nachbarinnen` }),
    ].filter((part) => part !== "");
    const meet = plural(data.corners + data.pairs, {
      one: "trifft sich nicht mehr und verfehlt sich",
      other: "treffen sich nicht mehr und verfehlen sich",
    });
    const stop = data.startDeg === null || tier === undefined ? null : say.stop(tier, data.startDeg);
    return [
      `Die Rasten des Rads versetzen sie um ${say.degrees(data.movedDeg, 2)}: ${what.join(" und ")} ${meet} um bis zu ${say.length(data.missMm)}.`,
      stop === null ? "" : `Bei Raste ${stop} begonnen trifft sich alles.`,
      data.wheels.length > 0
        ? `Auf einem Rad mit ${namedWheels(data.wheels)} Rasten trifft sich alles.`
        : "Kein Rad hat an allen diesen Stellen Rasten.",
    ]
      .filter((said) => said !== "")
      .join(" ");
  },
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
      ? `Bei ${say.length(data.depthMm)} ${by(some, "berührt", "berühren")} ${facets(some)} das Glas nur und ${by(some, "nimmt", "nehmen")} nichts weg.`
      : `${facets(some)} ${by(some, "trifft", "treffen")} bei ${say.length(data.depthMm)} kein Glas: Es beginnt dort ${say.length(data.neededMm)} unter der runden Oberfläche.`,
  lost: ({ data, facets: some }, say) =>
    `${facets(some)} ${by(some, "wird", "werden")} von ${data.by.map(say.tier).join(", ")} wieder weggeschliffen.`,
  sliver: ({ data, facets: some }, say) =>
    `${facets(some)} ${by(some, "ist nur ein", "sind nur")} Splitter, mindestens ${say.length(data.leastMm)}: dünner als die zugelassenen ${say.length(data.toleranceMm)}.`,
  "near-miss": ({ data }, say) =>
    `${corners(data.count)} ${plural(data.count, { one: "kommt", other: "kommen" })} fast auf einen Punkt, ${plural(data.count, { one: "verfehlt", other: "verfehlen" })} ihn aber um ${say.length(data.missMm)}.`,
  "short-edge": ({ data }, say) =>
    `${edges(data.count)} ${plural(data.count, { one: "ist", other: "sind" })} ${say.length(data.longestMm)} lang oder kürzer und ${plural(data.count, { one: "sieht wie ein Punkt", other: "sehen wie Punkte" })} aus.`,
  "skin-between": ({ data, tier }, say) => {
    const other = data.tiers.find((id) => id !== tier) ?? data.tiers[0];
    const [least, most] = [say.length(data.leastMm), say.length(data.mostMm)];
    return `Zu ${say.tier(other)} hin bleibt runde Haut, ${least === most ? least : `${least} bis ${most}`} breit.`;
  },
  "under-dop": ({ data, facets: some }, say) =>
    `${facets(some)} ${by(some, "läuft", "laufen")} ${say.length(data.byMm)} unter den Kittstock. ${say.isNothing(data.fitsMm) ? "Da kommt keiner frei." : `Einer von ${say.length(data.fitsMm)} käme gerade frei.`}`,
  "inside-broken": ({ data }, say) =>
    `Sie bricht ${say.length(-data.leastMm)} in das Innere ein. Mit ${say.length(data.depthThatClearsMm)} Tiefe bleibt sie frei.`,
  "inside-thin": ({ data }, say) =>
    `Nur ${say.length(data.leastMm)} Glas bleiben über dem Inneren. Mit ${say.length(data.depthThatClearsMm)} Tiefe ist es genug.`,
  vanished: () => "Vom Stück bleibt nichts: Manche Facetten sind tiefer geschliffen, als das Glas dick ist.",
};
