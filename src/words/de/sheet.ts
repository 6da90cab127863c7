/** The bench sheet in German. */

import { glassInWords } from "../glasses.ts";
import type { SheetWords } from "../sheet.ts";
import { cautions } from "./cautions.ts";
import { counted, plural } from "./counted.ts";
import { glasses } from "./glasses.ts";
import { verdict } from "./verdict.ts";

const PARTS = { arm: "Der Arm", chuck: "Das Futter", dop: "Der Kittstock" } as const;

export const sheetWordsDe: SheetWords = {
  language: "de",
  decimal: ",",
  units: { mm: "mm", inch: "Zoll", deg: "\u00b0" },
  glass: (glass) => glassInWords(glass, glasses),
  about: (diameter, glass, count, wheel) => `${diameter}, ${glass}, ${counted.facets(count)}, ${wheel}`,
  verdict,
  stop: (label) => `Raste ${label}`,
  wheel: (stops) => (stops === null ? "freier Winkelmesser" : `Teilrad mit ${stops} Rasten`),
  before: "Vor dem ersten Schliff",
  preparations: {
    "choose-dop": "passender Kittstock",
    "clean-and-cement": "gereinigt und gekittet",
    "centre-and-check-run-out": "zentriert, Rundlauf geprüft",
    "mark-stop-zero": "Raste 0 mit Tinte markiert",
    "look-for-stress": "zwischen gekreuzten Polfiltern auf Spannung geprüft",
    "warm-slowly": "Glas und Kitt langsam gewärmt",
    "test-facet-on-scrap": "Probefacette an einem Rest desselben Glases",
  },
  side: (side) => (side === "front" ? "Vorderseite" : "Rückseite"),
  turnOver: (side) => `Stück umdrehen: ${side === "front" ? "Vorderseite" : "Rückseite"}`,
  trialFacet:
    "An neuen Kittstock kitten, Raste 0 markieren, Probefacette anschleifen, Versatz messen, dann weiter.",
  mark: (reading) => `Der Tintenstrich steht oben bei ${reading}.`,
  tier: (name, count, angle, first, width) =>
    `${name}: ${counted.facets(count)} bei ${angle}, ab Raste ${first}, ${plural(count, { one: "", other: "je " })}${width} breit.`,
  pivot: (height, arm) => `Drehpunkt ${height} über der Scheibe, Arm ${arm}.`,
  opposite: (kind, tier) =>
    kind === "skin" ? "zur Haut" : kind === "edge" ? `zur Kante von ${tier}` : `zur Fläche von ${tier}`,
  calipers: (mm, to) => `Schieblehre ${mm.join(" bis ")} ${to}.`,
  noCalipers: "Nach der Breite gehen: Der Kittstock ist der Schieblehre im Weg.",
  hingeMoves: (stage, by, isUp) => `Für ${stage} den Drehpunkt um ${by} ${isUp ? "heben" : "senken"}.`,
  guide: (lean, until) =>
    `Von Hand: den Kittstock ${lean ? `in einer Führung ${lean} gegen die Senkrechte` : "senkrecht in einer Winkelführung"} halten. Zum Aufhören: ${until}`,
  outOfReach: "Für diesen Arm nicht erreichbar.",
  stage: (name, width, widths) => `${name}: ${width}${widths.length > 0 ? ` (${widths.join("; ")})` : ""}`,
  endsWith: (stage, finish) =>
    `Nach ${stage} aufhören: Diese Reihe bleibt ${finish === "ground" ? "geschliffen" : "vorpoliert"}.`,
  bracketWidths:
    "In Klammern: Breite beim Schleifen der ersten Facette, dann der nächsten; die letzte endet wie angegeben",
  stopWidths: (unit) => `Unter einer Raste: ihre letzte Breite beim Schleifen, ${unit}`,
  strokes: (least, most) =>
    least === most ? `${most} ${plural(most, { one: "Hub", other: "Hübe" })}` : `${least} bis ${most} Hübe`,
  strokesUnknown: "Ohne Hübe: nach der Breite gehen",
  discs: "Die Scheiben stehen verschieden dick.",
  polishEnds: "Polieren, bis die Lupe schräg gegen eine Lampe kein Grau mehr zeigt",
  washFirst: "Erst waschen: Stück, Scheibe und Hände, vor grobem Korn",
  measures: ["Breite", "Pol", "Dicke", "Winkel"],
  measured: "Lücken: wie gemessen, Breite, über den Pol, Dicke mit der Schieblehre, Winkel abgelesen",
  pictures:
    "Bilder: eine fertige Facette in wahrer Größe; durchgezogen: Kante mit Nachbarin, punktiert: runde Haut",
  swallowed: "Von dieser Facette bleibt am fertigen Stück nichts.",
  nothingToGrind: "Nichts zu schleifen: Tiefe 0.",
  polished: (tier) => `Neben polierter Reihe ${tier}: erst waschen.`,
  hitsLap: (part) =>
    part === "arm"
      ? "Der Arm stieße an die Scheibe: längeren Kittstock nehmen."
      : `${PARTS[part]} stieße an die Scheibe: ${part === "chuck" ? "ein schmaleres" : "einen schmaleren"} oder einen längeren Kittstock nehmen.`,
  overRim: (mm) => `Die Facette hängt ${mm} über den Rand der Scheibe.`,
  overCentre: "Die Facette liegt quer über der Scheibenmitte, wo sich nichts bewegt.",
  beforeTurning: (height, arm) =>
    `Geht schon vor dem Umdrehen, den Arm nach oben gekippt: Drehpunkt ${height}, Arm ${arm}.`,
  tooMuch: "Dieser Plan ist zu viel für zwei Seiten: Kleiner wäre er auf Armlänge nicht mehr zu lesen.",
  startAt: (stage) => `Mit ${stage} beginnen: gröbere schädigen tiefer, als diese Reihe ist.`,
  unmet: "Die Regel des Plans lässt sich für diese Reihe nicht erfüllen; dies ist das Nächste, was geht.",
  gauges: "Breitenlehren",
  checkBar: (length) => `${length}: erst mit dem Lineal prüfen`,
  cautionsTitle: "Vorsicht",
  cautions,
  notes: "Notizen",
};
