/** Wörter der Seite, die ein Kunde bekommt. */
import type { show as en } from "../en/show.ts";
import type { Translated } from "../language.ts";

export const show: Translated<typeof en> = {
  hint: "Zum Drehen mit Finger oder Maus ziehen, oder die Pfeiltasten nehmen.",
  piece: (name) => `${name}, zum Drehen`,
  turnedBy: (degrees) => `um ${degrees} Grad gedreht`,
  turn: "Drehen lassen",
  stop: "Anhalten",
  light: "Licht bewegen",
  uncut: "Neben der ungeschliffenen Kugel",
  coin: (mm, inch) => `${mm} mm (${inch} Zoll) im Durchmesser, neben einer Münze zu einem Euro (23,25 mm).`,
  hand: (mm, inch) =>
    `${mm} mm (${inch} Zoll) im Durchmesser, neben der Hand eines Erwachsenen (etwa 185 mm lang).`,
  by: (maker) => `von ${maker}`,
  pictures: "Auf diesem Gerät lässt sich kein Licht verfolgen, darum sind dies vorher gemachte Bilder.",
  drawing: "Auf diesem Gerät lässt sich Licht nicht verfolgen, also ist dies eine Zeichnung der Facetten.",
  stillOnly: "Dieses Bild wurde vorher gemacht. Mit erlaubten Skripten lässt sich das Stück drehen.",
  measured:
    "Das Glas ist noch nicht geschliffen: So wird es aussehen, berechnet aus seinem Plan. Eine Form, die man sehen kann, kann man auch messen.",
  recipe: "Wie es geschliffen wird",
  recipeFacets: (tier, facets, side, angle, start, depth) =>
    `${tier}: ${facets} ${side} bei ${angle}°, die erste bei ${start}°, ${depth} mm tief.`,
  facets: { one: "1 Facette", other: (count) => `${count} Facetten` },
  front: "vorn",
  back: "hinten",
};
