import type { drawings as en } from "../en/drawings.ts";
import type { Translated } from "../language.ts";
import { plural } from "./counted.ts";
import { names } from "./names.ts";

const both = (names: readonly string[]): string =>
  names.length < 2 ? names.join() : `${names.slice(0, -1).join(", ")} und ${names[names.length - 1]}`;

export const drawings: Translated<typeof en> = {
  tierNumber: names.tier,
  profile: "Profil",
  profileOf: (tiers) => `Halbschnitt durch die Achse, Vorderseite oben. ${tiers}`,
  skin: "Haut",
  skinOf: (tiers) => `Die runde Oberfläche abgerollt, vorderer Pol oben, Flächen wahr. ${tiers}`,
  front: "vorn",
  back: "hinten",
  frontPole: "vorderer Pol",
  backPole: "hinterer Pol",
  equator: "Äquator",
  dop: "Kittstock",
  inkMark: "Tintenstrich",
  empty: "Noch ist nichts geschliffen: die Murmel ist ganz.",
  tierSaid: (name, count, angle, meeting) => `${name}: ${count} bei ${angle}, ${meeting}.`,
  meeting: {
    edge: (mm) => `gemeinsame Kanten von ${mm}`,
    touch: "berühren sich gerade",
    gap: (mm) => `${mm} Abstand`,
    alone: "allein",
    gone: "nichts davon übrig",
  },
  handle: (name) => `${name}: Armwinkel und Tiefe`,
  handleKeys:
    "Pfeil auf und ab: Armwinkel. Pfeil links und rechts: tiefer und flacher. Umschalt: fein. Bild auf und ab: zur nächsten Tiefe, die trifft. Eine getippte Zahl und Eingabe: dieser Armwinkel.",
  fresh: "Neue Reihe",
  pullIn: "nach innen ziehen schleift",
  skinHandle: (name) => `${name}: Beginn und Armwinkel`,
  skinKeys:
    "Pfeil links und rechts: Beginn, Raste für Raste. Pfeil auf und ab: Armwinkel. Umschalt: fein. Bild auf und ab: zum nächsten Winkel, der trifft.",
  stop: (k) => `Raste ${k}`,
  snap: {
    stop: (k) => `auf Raste ${k}`,
  },
  live: {
    angle: "Winkel",
    depth: "Tiefe",
    width: "Breite",
    gap: "Abstand",
    edge: "Kante",
    start: "Beginn",
  },
  lost: (tier) => `${tier} kann hier seine Regel nicht halten`,
  lostWhy: (tier, why) => `${tier} kann hier seine Regel nicht halten. ${why}`,
  mark: {
    gap: (facets, mm) => `${both(facets)} stehen ${mm} auseinander`,
    touch: (facets) => `${both(facets)} berühren sich gerade`,
    corner: (facets) => `${both(facets)} kommen auf einen Punkt`,
    miss: (facets, mm) => `${both(facets)} kommen fast auf einen Punkt: es fehlen ${mm}`,
  },
  turnStrip: "Den Streifen drehen",
  turnKeys:
    "Pfeil links und rechts drehen den Streifen, Umschalt: fein. Pos1 bringt den Tintenstrich wieder in die Mitte.",
  markKeys: "Eingabe: was diese Reihe trifft, eine Stelle nach der anderen.",
  card: {
    none: "Wähle eine Facette, dann liegt sie hier flach.",
    swallowed: "Von dieser Facette bleibt nichts: ihre Nachbarn nehmen alles.",
    roundSkin: "Haut",
    wide: "breit",
    high: "hoch",
    print: "1:1 drucken",
    check: (mm) => `Dieser Balken ist ${mm} lang, wenn der Druck stimmt.`,
    facet: (name, k, n) => `${name}, Facette ${k} von ${n}`,
    setting: (angle, stop, depth) => `${angle}, ${stop}, ${depth} tief`,
    noStop: (deg) => `Azimut ${deg}`,
    seen: "von außen gesehen, Vorderseite nach oben",
  },
  allMeets: {
    angles: (from, to, isAll) =>
      `${isAll ? "Alles trifft sich" : "Was sich trifft, tut es weiter"} ${from === to ? `nur bei ${from}` : `von ${from} bis ${to}`}`,
    counts: (counts, isAll) =>
      `${isAll ? "Alles trifft sich" : "Was sich trifft, tut es weiter"} ${counts.length === 1 ? `nur mit ${counts[0]}` : `mit ${counts.slice(0, -1).join(", ")} oder ${counts.at(-1)}`}`,
  },
  suggest: {
    open: "Anzahlen und Winkel, die aufgehen",
    intro: (tier, depth) => `Was für ${tier} bei der Tiefe von ${depth} aufgeht.`,
    edge: "Länge einer gemeinsamen Kante",
    looking: "Wird gesucht",
    none: "Für diese Reihe fand sich nichts, das trifft. Eine andere Tiefe bietet vielleicht mehr.",
    facets: (count) => `${count} Facetten`,
    kind: {
      touch: "berühren sich gerade",
      edge: (mm) => `teilen ${mm}`,
      corners: (tier) => `zu den Ecken von ${tier}`,
      "touch-at-corners": (tier) => `berühren sich an den Ecken von ${tier}`,
    },
    choose: (count, angle, what) => `${count} Facetten bei ${angle}, ${what}`,
    deep: (mm) => `${mm} tief`,
    gone: (facets) =>
      plural(facets, {
        one: "1 Facette wird dabei weggeschliffen",
        other: `${facets} Facetten werden dabei weggeschliffen`,
      }),
  },
  diary: {
    open: "Tagebuch der Arbeit",
    close: "Tagebuch schließen",
    group: "Augenblicke der Arbeit",
    before: "Früher",
    after: "Später",
    uncut: "ungeschliffen",
    moment: (tier, k, width) => `${tier}, Facette ${k}: jetzt ${width} breit`,
    place: (tier, k) => `${tier}, Facette ${k}`,
    atEnd: (width) => `am Ende ${width}`,
  },
};
