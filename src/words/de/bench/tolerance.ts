/** Words of what chance does to settings. */

import type { tolerance as en } from "../../en/bench/tolerance.ts";
import type { Translated } from "../../language.ts";
import { counted } from "../counted.ts";

export const tolerance: Translated<typeof en> = {
  tolerance: {
    what: "Niemand stellt einen Winkel zweimal gleich. Sag, wie weit deine Einstellungen streuen, und sieh, wie oft sich alles träfe.",
    arm: "Armwinkel streut um",
    armHow: "Eine Abweichung: Zwei von drei Einstellungen liegen näher",
    stopPlay: "Spiel einer Raste",
    stopHow: "Drehung, die bei eingerasteter Raste bleibt",
    depth: "Tiefe streut um",
    depthHow: "Von Facette zu Facette einer Reihe",
    diameters: ["Ein zweiter Durchmesser", "Ein dritter Durchmesser"],
    diameterHow: "Quer zum ersten gemessen",
    own: "Deine eigene Streuung, im Plan aufgehoben. Den Schlag stellst du bei jedem Kittstock unter Einrichten ein.",
    usual:
      "Übliche Praxis einer geübten Hand, ohne Quelle. Den Schlag stellst du bei jedem Kittstock unter Einrichten ein.",
    run: "Viele Male nach Zufall schleifen",
    running: (percent) => `${percent} % fertig`,
    stop: "Anhalten",
    failed: "Der Versuch ließ sich nicht beenden. Nichts ist verändert; versuch es noch einmal.",
    stale: "Der Plan hat sich seither geändert: Das hier gilt für den Plan, wie er war.",
    result: "Was herauskam",
    noPairs: "In diesem Plan sollen sich keine Facetten treffen, also kann auch nichts danebengehen.",
    alike: "Nach Breite oder nach Tiefe aufhören kommt hier aufs Gleiche heraus.",
    widthSafer: "Hör bei jeder Facette nach der Breite auf: Das ist hier sicherer.",
    depthSafer: "Hör bei jeder Facette nach der Tiefe auf: Das ist hier sicherer.",
    ways: { width: "Nach der Breite aufhören", depth: "Nach der Tiefe aufhören" },
    chance: (n, unsure) => `An ${n} von 100 Stücken trifft sich jedes Paar (plus oder minus ${unsure}).`,
    matters: (source, mm) => `Am meisten zählt ${source}: Das verschiebt Lücken um ${mm}.`,
    less: (others) => `Dann ${others}.`,
    sources: {
      armAngle: "der Armwinkel",
      stopPlay: "das Spiel der Rasten",
      depth: "die Tiefe",
      width: "dein Blick für die Breite",
      outOfRound: "die Unrundheit der Murmel",
      runOut: "der Schlag des Kittstocks",
    },
    margin: (mm) => `Geh überall ${mm} tiefer, dann treffen sich 95 von 100.`,
    marginNone: "95 von 100 treffen sich ohne jede Zugabe.",
    noMargin: "Keine Zugabe an Tiefe bringt es auf 95 von 100: Bessere zuerst, was am meisten zählt.",
    weakest: (a, b, n, mm) =>
      `Das schwächste Paar ist ${a} mit ${b}: Es trifft sich ${n}-mal in 100, seine Lücke streut um ${mm}.`,
    how: (n, width, pairs) =>
      `Aus ${n} nach Zufall geschliffenen Stücken je Weise, je ${counted.pairs(pairs)}; eine Breite gilt als auf ${width} gesehen.`,
  },
};
