import type { benchFindings as en } from "../en/bench-findings.ts";
import type { Translated } from "../language.ts";

export const benchFindings: Translated<typeof en> = {
  defaultStages:
    "Der Plan nennt keine Schleifmittel, die üblichen stehen ein (übliche Praxis). Trag deine unter Einrichten ein.",
  startAtStage: (stage, depth) =>
    `Beginn diese Reihe mit ${stage}: Sie ist nur ${depth} tief, und gröbere Mittel schädigen tiefer.`,
  discDulls: (stage, strokes, percent, isWornOut) =>
    isWornOut
      ? `Die Scheibe von ${stage} hält nicht durch: Dieser Plan verlangt etwa ${strokes} Hübe von ihr. Halt eine frische bereit, und eich beim Wechsel neu.`
      : `Die Scheibe von ${stage} stumpft ab: Nach den ${strokes} Hüben dieses Plans nimmt sie etwa ${percent} % von dem, was sie jetzt nimmt. Schleif zwischendurch wieder eine Probefacette, oder geh nach der Breite.`,
  nothingToGrind: "Diese Reihe hat keine Tiefe: Es gibt nichts zu schleifen.",
  coarseBesidePolished: (stage, polished) =>
    `Sie wird mit ${stage} dicht neben polierten Facetten von ${polished} geschliffen. Wasch vorher Stück, Scheibe und Hände, oder deck die Politur ab.`,
  turnedOften: (n) =>
    `In dieser Folge wird das Stück ${n}-mal umgedreht, und jedes Mal kostet Genauigkeit. Schleif zuerst alle Reihen einer Seite.`,
  cutBeforeTurning: (angle, height, arm) =>
    `Sie geht schon vor dem Umdrehen, der Arm um ${angle} nach oben gekippt: Drehpunkt ${height} über der Fläche, Arm ${arm}.`,
  reach: {
    "radius-inside-band": (needs, limit) =>
      `Außer Reichweite: Die Facette läge ${needs} von der Scheibenmitte, und das gute Band beginnt bei ${limit}.`,
    "radius-outside-band": (needs, limit) =>
      `Außer Reichweite: Die Facette läge ${needs} von der Scheibenmitte, und das gute Band endet bei ${limit}.`,
    "pivot-too-low": (needs, limit) =>
      `Außer Reichweite: Der Drehpunkt stünde auf ${needs}, sein tiefster Platz ist ${limit}.`,
    "pivot-too-high": (needs, limit) =>
      `Außer Reichweite: Der Drehpunkt stünde auf ${needs}, sein höchster Platz ist ${limit}.`,
  },
  otherArm: (arm, height, radius) =>
    `In Reichweite mit dem Arm auf ${arm}: Drehpunkt ${height} hoch, ${radius} von der Scheibenmitte.`,
  extension: (length, by) => `Ein Arm von ${length}, ${by} länger, würde reichen.`,
  shorterArm: (length, by) => `Ein Arm von ${length}, ${by} kürzer, würde reichen.`,
  guideUpright: (flat) =>
    `Anders: Halt den Kittstock senkrecht in einem rechtwinkligen Führungsblock auf der Scheibe und hör auf, wenn Fläche bis Haut ${flat} misst.`,
  guide: (lean, flat) =>
    `Anders: Halt den Kittstock in einem um ${lean} schräg gebohrten Führungsblock auf der Scheibe und hör auf, wenn Fläche bis Haut ${flat} misst.`,
  parts: { arm: "Der Arm", chuck: "Das Futter", dop: "Der Kittstock" },
  hitsLap: (part, mm) => `${part} stünde ${mm} tief in der Scheibe, bevor die Facette fertig ist.`,
  overRim: (mm) => `Die Facette hängt ${mm} über den Rand der Scheibe.`,
  overCentre: "Die Facette liegt quer über der Scheibenmitte, wo die Fläche stillsteht.",
  undetermined: { angle: "Winkel", depth: "Tiefe", both: "Winkel und Tiefe" },
  undeterminedSays: (what) => `Diese Messungen lassen ${what} offen, der Plan springt ein.`,
  wouldHelp: (what, deg, mm) =>
    `Messen ${what} würde am meisten helfen: dann plus oder minus ${deg} und ${mm}.`,
  disagree: (what, measured, fitted) =>
    `Das Ergebnis ${what} (${measured}) passt nicht zum Rest, der ${fitted} sagt. Miss noch einmal.`,
};
