/** Words of what was measured on the cut piece, and of a chip. */
import type { asCut as en } from "../../en/bench/as-cut.ts";
import type { Translated } from "../../language.ts";
import { counted, lostPairs } from "../counted.ts";
import { measures } from "../measures.ts";

export const asCut: Translated<typeof en> = {
  asCut: {
    what: "Trag ein, was du an einer fertigen Reihe gemessen hast, bevor die nächste geschliffen wird. Die übrigen Reihen werden neu gelöst, damit sie sich treffen.",
    failed: "Die Messungen ließen sich nicht auswerten. Sie sind aufgehoben; schau nach einem Versehen.",
    tierLine: (count, angle) => `${counted.facets(count)}, geplant bei ${angle}`,
    measure: "Messungen eintragen",
    measured: "Messungen",
    measureWhat: "Irgendwelche davon; jede ist das Mittel über die Reihe. Lass den Rest leer.",
    fields: {
      widthMm: "Facettenbreite",
      heightMm: "Facettenhöhe",
      gapMm: "Lücke zwischen Nachbarinnen",
      edgeMm: "Gemeinsame Kante",
      acrossMm: "Über den Pol",
      flatToSkinMm: "Fläche bis Haut",
      caliperMm: "Schieblehre",
      readDeg: "Abgelesener Winkel",
      pivotHeightMm: "Drehpunkthöhe",
      armLengthMm: "Armlänge",
    },
    how: {
      widthMm: "Am breitesten, längs des Rings",
      heightMm: "Polseite bis Äquatorseite",
      gapMm: "Längs der Haut; unter 0, wo sie sich überlappen",
      edgeMm: "Länge der Linie, die zwei Nachbarinnen teilen",
      acrossMm: "Schieblehre über den Pol, zwischen oberen Enden gegenüberliegender Facetten",
      flatToSkinMm: "Schieblehre, Facette bis runde Haut gegenüber",
      caliperMm: "Eine Backe plan auf der Facette, die andere am fernsten Punkt gegenüber",
      readDeg: "Armwinkel, von der Skala oder einem Winkelmesser",
      pivotHeightMm: "Fläche bis Gelenkstift, Facette liegt plan",
      armLengthMm: "Gelenkstift bis Mitte der Murmel",
    },
    measures,
    sd: "Schieblehre genau auf",
    sdHow: "Eine Abweichung",
    readSd: "Winkel gelesen auf",
    readSdHow: "Eine Abweichung",
    single: "Eine Facette für sich",
    whichFacet: "Facette",
    facet: (k) => `Facette ${k}`,
    facetStop: (k, stop) => `Facette ${k}, Raste ${stop}`,
    measuredAlready: "gemessen",
    fits: (angle, angleSd, depth, depthSd) =>
      `Geschliffen bei ${angle} (plus oder minus ${angleSd}), ${depth} tief (plus oder minus ${depthSd}).`,
    planned: (angle, depth) => `Geplant: ${angle}, ${depth} tief.`,
    locked: "Der Plan hält diese Reihe so fest, wie sie geschliffen ist.",
    wouldHelp: (what, deg, mm) => `Messen ${what} würde es am meisten eingrenzen: auf ${deg} und ${mm}.`,
    tooDeep: (k, mm) => `Facette ${k} ging ${mm} tiefer als ihre Reihe.`,
    toMatch: "Den Rest anzugleichen heißt:",
    change: (tier, deeper, isDeeper, wider, isWider) =>
      `${tier} geht ${deeper} ${isDeeper ? "tiefer" : "weniger tief"} und wird ${wider} ${isWider ? "breiter" : "schmaler"}.`,
    stillMeets: "Alles, was sich traf, trifft sich weiterhin.",
    noLongerMeets: (pairs) =>
      pairs === 0 ? "Eine Regel des Plans lässt sich nicht mehr erfüllen." : lostPairs(pairs),
    deepenAll: (mm) => `Ganze Reihe auf ${mm} bringen`,
    remaining: "Noch zu schleifende Reihen",
    allCut: "Jede Reihe ist gemessen: Es bleibt nichts zu schleifen.",
    stays: (tier, mm) => `${tier} bleibt bei ${mm} Tiefe.`,
    goes: (tier, before, after) => `${tier} geht von ${before} auf ${after} Tiefe.`,
    cantMeet: "Ihre Regel lässt sich nicht mehr erfüllen; das hier ist das Nächste, was geht.",
    cant: (tier) =>
      `${tier} ist von dem aus, was geschliffen ist, nicht zu erreichen. Sie behält ihren Winkel und ihre Regel.`,
    follow: {
      title: "Dem folgen, was geschliffen ist",
      searching: (percent) => `Suche nach der kleinsten Änderung der Winkel: ${percent} %`,
      stop: "Anhalten",
      look: "Die kleinste Änderung der Winkel suchen",
      failed: "Die Suche nach anderen Winkeln ist gescheitert. Was gemessen wurde, ist aufgehoben.",
      depthAlone:
        "Mit den Tiefen oben trifft sich wieder alles, was sich traf. Kein Winkel muss sich ändern.",
      least:
        "Mit diesen Winkeln, der kleinsten Änderung, die reicht, trifft sich wieder alles, was sich traf:",
      most: (pairs, corners) =>
        `Keine Drehung bis 10° erhält alles. Diese erhält das meiste; verloren: ${[
          ...(pairs > 0 ? [counted.pairs(pairs)] : []),
          ...(corners > 0 ? [counted.corners(corners)] : []),
        ].join(" und ")}.`,
      mostAsIs: (pairs, corners) =>
        `Keine Drehung bis 10° erhält mehr als die geplanten Winkel: Nicht mehr zu treffen sind ${[
          ...(pairs > 0 ? [counted.pairs(pairs)] : []),
          ...(corners > 0 ? [counted.corners(corners)] : []),
        ].join(" und ")}.`,
      angle: (tier, before, after) => `${tier}: aus ${before} wird ${after}`,
      depth: (before, after) => `aus ${before} Tiefe wird ${after}`,
      pivot: (before, after) => `aus ${before} Drehpunkthöhe wird ${after}`,
      take: "Diese Winkel nehmen",
      planned: "Wie geplant",
      adjusted: "Nach dem, was geschliffen ist",
    },
    lock: "So festhalten und den Rest neu lösen",
    allLocked: "Was geschliffen ist, steht fest; die Reihen oben folgen.",
  },
  chip: {
    title: "Ein Ausbruch am fertigen Stück",
    what: "Sag, wo er liegt und wie groß er ist, und sieh den kleinsten Nachschliff, der ihn wegnimmt. Such vor dem Schleifen nach Sprüngen, die weiterlaufen.",
    tier: "In Reihe",
    facet: "Auf Facette",
    across: "Rechts der Mitte",
    acrossHow: "Von außen gesehen, Pol oben; unter 0 ist links",
    up: "Zum Pol hin",
    upHow: "Von der Mitte der Facette; unter 0 ist vom Pol weg",
    depth: "Tief",
    depthHow: "Von der Facette bis zum Grund",
    diameter: "Quer",
    diameterHow: "An der breitesten Stelle",
    none: "Kein Nachschliff nimmt ihn weg: Er liegt außerhalb des fertigen Stücks, oder es ginge bis zur Mitte.",
    way: (tier, k, mm) => `${tier} ${mm} tiefer; Facette ${k} nimmt den Ausbruch weg.`,
    dear: (times) => `Das nimmt ${times}-mal so viel Glas weg wie der erste Weg.`,
    intoInside: (mm) => `Das bricht ${mm} tief in das Innere.`,
    take: "Diesen Nachschliff planen",
  },
};
