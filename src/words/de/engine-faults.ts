/** Was das Rechenwerk nicht kann. */
import type { EngineFaultWords } from "../engine-faults.ts";

export const engineFaults: EngineFaultWords = {
  inexact: (law) =>
    `dieser Plan lässt sich nicht genau berechnen: Seine Facetten treffen sich so, dass doppelt genaue Zahlen es nicht unterscheiden (${law})`,
  brokenMesh: (why) => `aus diesem Plan lässt sich kein stimmiges Modell machen: ${why}`,
  mesh: {
    open: "seine Oberfläche wäre nicht geschlossen",
    "not-one-surface": "seine Oberfläche wäre nicht eine ganze",
    surface: "es stünde von Facetten oder Haut ab",
    volume: "sein Rauminhalt wäre nicht der des Stücks",
    skin: "die Haut, die bleibt, ist zu schmal für ein Netz",
  },
  brokenPicture: (id) => `pictures.${id}: das Bild ist beschädigt und nicht zu lesen`,
  nothingLeft: "dieser Plan lässt vom Stück nichts übrig, also gibt es kein Modell zu schreiben",
  pageTooLarge: (kilobytes, limit) =>
    `die Seite hätte mit den gröbsten Bildern noch ${kilobytes} kB, und weniger als ${limit} sind erlaubt: lass das Rezept weg oder nimm ein kleineres Zeichen`,
};
