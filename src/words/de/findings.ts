import type { findings as en } from "../en/findings.ts";
import type { Translated } from "../language.ts";

export const findings: Translated<typeof en> = {
  someFacets: (count) => (count === 1 ? "1 Facette" : `${count} Facetten`),
  wish: {
    depth: (asked) => `${asked} tief werden`,
    width: (asked) => `${asked} breit werden`,
    gap: (asked) => `Lücken von ${asked} lassen`,
    touch: () => "sich gerade berühren",
    edge: (asked) => `Kanten von ${asked} teilen`,
    close: (_asked, other) => `an ${other} anschließen`,
    corners: (_asked, other) => `in die Ecken von ${other} kommen`,
  },
  why: {
    single: () => "eine Facette allein hat keine Nachbarin in ihrer Reihe",
    "same-place": () => "alle ihre Facetten stehen an einer Stelle",
    "already-closer": (got) => `ihre Nachbarinnen stehen schon ungeschliffen nur ${got} auseinander`,
    "never-shared": () => "ihre Nachbarinnen teilen in keiner Tiefe eine Kante",
    "too-long": (got, angle, count) => `bei ${angle} können ${count} Facetten höchstens ${got} teilen`,
    "too-wide": (got, angle, count) =>
      `bei ${angle} können ${count} Facetten hier höchstens ${got} breit werden`,
    covered: () => "frühere Reihen haben alles Glas genommen, auf dem sie stünde",
    "no-corners": (_got, _angle, _count, other) =>
      `Nachbarinnen in ${other} berühren sich nicht und teilen keine Kanten, also gibt es keine Ecken`,
    "open-below": (got, _angle, _count, other) =>
      `Nachbarinnen in ${other} stehen ${got} auseinander, dazwischen läuft die Haut durch`,
    "ground-away": (_got, _angle, _count, other) => `von ${other} ist nichts übrig`,
    "stays-open": (_got, _angle, _count, other) => `zu ${other} hin bleibt in jeder Tiefe runde Haut offen`,
  },
  ruleUnmet: (wish, why, depth) =>
    `Sie kann nicht ${wish}: ${why}. ${depth === null ? "Sie behält Winkel und Regel und wird nicht geschliffen." : `Gezeichnet ist sie mit ${depth} Tiefe.`}`,
  overshoot: (facets, worst, isOne) =>
    `${facets} ${isOne ? "geht" : "gehen"} bis zu ${worst} über ihre Ecke hinaus: Nicht alle Ecken liegen gleich tief.`,
  uneven: (count, stops, off, gap, counts) =>
    `${count} Facetten gehen auf einem Rad mit ${stops} Rasten nicht auf: Sie stehen bis zu ${off} daneben, das ändert Lücken um ${gap}. Dieses Rad kann ${counts}.`,
  startMoved: (moved, placed, isBack) =>
    `Sie beginnt zwischen zwei Rasten: Das Rad setzt sie ${moved} ${isBack ? "zurück" : "weiter"}, bei ${placed}.`,
  wheelSplits: (moved, corners, pairs, miss) => {
    const what = [
      corners === 0 ? "" : corners === 1 ? "1 Ecke" : `${corners} Ecken`,
      pairs === 0 ? "" : pairs === 1 ? "1 Paar Nachbarinnen" : `${pairs} Paare Nachbarinnen`,
    ].filter((part) => part !== "");
    return `Die Rasten des Rads versetzen sie um ${moved}: ${what.join(" und ")} ${corners + pairs === 1 ? "trifft sich nicht mehr und verfehlt sich" : "treffen sich nicht mehr und verfehlen sich"} um bis zu ${miss}.`;
  },
  startKeeps: (stop) => `Bei Raste ${stop} begonnen trifft sich alles.`,
  wheelsKeep: (wheels) => `Auf einem Rad mit ${wheels} Rasten trifft sich alles.`,
  noWheelKeeps: "Kein Rad hat an allen diesen Stellen Rasten.",
  duplicate: (facet, other) => `${facet} ist genau dieselbe Fläche wie ${other}, die bleibt.`,
  duplicates: (count, other) =>
    `${count} Facetten sind genau dieselben Flächen wie in ${other}, die bleiben.`,
  nearDuplicates: (count, other, apart, mm) =>
    `${count} Flächen von ${other} werden hier ein zweites Mal geschliffen, höchstens ${apart} und ${mm} daneben.`,
  onlyTouches: (facets, depth, isOne) =>
    `Bei ${depth} ${isOne ? "berührt" : "berühren"} ${facets} das Glas nur und ${isOne ? "nimmt" : "nehmen"} nichts weg.`,
  nearDuplicate: (facet, other, apart, mm) =>
    `${facet} und ${other} sind eine Fläche, zweimal geschliffen: ${apart} und ${mm} auseinander.`,
  swallowed: (facets, depth, needed) =>
    `${facets} treffen bei ${depth} kein Glas: Es beginnt dort ${needed} unter der runden Oberfläche.`,
  lost: (facets, by, isOne) => `${facets} ${isOne ? "wird" : "werden"} von ${by} wieder weggeschliffen.`,
  sliver: (facets, least, permitted, isOne) =>
    `${facets} ${isOne ? "ist nur ein" : "sind nur"} Splitter, mindestens ${least}: dünner als die zugelassenen ${permitted}.`,
  nearMiss: (corners, miss, isOne) =>
    `${corners} ${isOne ? "kommt" : "kommen"} fast auf einen Punkt, ${isOne ? "verfehlt" : "verfehlen"} ihn aber um ${miss}.`,
  corners: (count) => (count === 1 ? "1 Ecke" : `${count} Ecken`),
  shortEdge: (edges, longest, isOne) =>
    `${edges} ${isOne ? "ist" : "sind"} ${longest} lang oder kürzer und ${isOne ? "sieht wie ein Punkt" : "sehen wie Punkte"} aus.`,
  edges: (count) => (count === 1 ? "1 Kante" : `${count} Kanten`),
  skinBetween: (other, wide) => `Zu ${other} hin bleibt runde Haut, ${wide} breit.`,
  range: (least, most) => `${least} bis ${most}`,
  underDop: (facets, by, fits, isOne) =>
    `${facets} ${isOne ? "läuft" : "laufen"} ${by} unter den Kittstock. Einer von ${fits} käme gerade frei.`,
  insideBroken: (by, depth) => `Sie bricht ${by} in das Innere ein. Mit ${depth} Tiefe bleibt sie frei.`,
  insideThin: (left, depth) => `Nur ${left} Glas bleiben über dem Inneren. Mit ${depth} Tiefe ist es genug.`,
  vanished: "Vom Stück bleibt nichts: Manche Facetten sind tiefer geschliffen, als das Glas dick ist.",
  facetOf: (tier, place) => `Facette ${place} von ${tier}`,
};
