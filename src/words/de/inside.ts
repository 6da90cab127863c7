/** Was im Glas ist, Feld für Feld. */
import type { inside as en } from "../en/inside.ts";
import type { Translated } from "../language.ts";

export const inside: Translated<typeof en> = {
  fields: {
    diameterMm: "Durchmesser",
    lengthMm: "Länge",
    widthMm: "Breite",
    thicknessMm: "Dicke",
    depthMm: "Tiefe",
    heightMm: "Höhe",
    grainMm: "Korn",
    turns: "Windungen",
    strands: "Stränge",
    strandMm: "Dicke eines Strangs",
    pitchMm: "Länge einer Windung",
    taper: "Nach hinten verjüngt, 0 bis 1",
    veil: "Feine Fäden",
    arms: "Arme",
    bubbleMm: "Blase",
    spanMm: "Länge oder Weite des Rings",
    vein: "Ader, 0 bis 1",
    fadeMm: "Weicher Rand",
    milky: "Milchig, 0 bis 1",
    irregularity: "Unregelmäßig, 0 bis 1",
    seed: "Welche von vielen",
    count: "Wie viele",
    up: "Nach vorn",
    tiltDeg: "Neigung",
    turnDeg: "Drehung vom Tintenstrich",
  },
  inRing: "Im Ring statt in einer Reihe",
  isMelted: "Ins Glas verschmolzen",
};
