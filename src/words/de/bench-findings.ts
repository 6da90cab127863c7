/** Was die Befunde der Werkbank sagen, nach ihrem Code. */
import type { MeasureName } from "../../core/bench/as-cut/measurements.ts";
import type { BenchFindingWords } from "../bench-findings.ts";
import { isWornOut, roundPercent, roundStrokes } from "../rounding.ts";
import type { Say } from "../say.ts";
import { measures } from "./measures.ts";

const PARTS = { arm: "Der Arm", chuck: "Das Futter", dop: "Der Kittstock" } as const;

const measured = (measure: MeasureName, value: number, say: Say): string =>
  measure === "readDeg" ? say.degrees(value) : say.length(value);
/** One length, or least and greatest. */
const figures = (mm: number | readonly [number, number], say: Say): string =>
  typeof mm === "number" ? say.length(mm) : `${say.length(mm[0])} bis ${say.length(mm[1])}`;
const deviation = (deg: number, say: Say): string => say.degrees(deg, Math.abs(deg) < 0.1 ? 2 : 1);

export const benchFindings: BenchFindingWords = {
  "default-stages": () =>
    "Der Plan nennt keine Schleifmittel, die üblichen stehen ein (übliche Praxis). Trag deine unter Einrichten ein.",
  "start-at-stage": ({ data }, say) =>
    `Beginn diese Reihe mit ${say.stage(data.stage)}: Sie ist nur ${say.length(data.depthMm)} tief, und gröbere Mittel schädigen tiefer.`,
  "disc-dulls": ({ data }, say) => {
    const [stage, strokes] = [say.stage(data.stage), say.number(roundStrokes(data.plannedStrokes))];
    return isWornOut(data.share)
      ? `Die Scheibe von ${stage} hält nicht durch: Dieser Plan verlangt etwa ${strokes} Hübe von ihr. Halt eine frische bereit, und eich beim Wechsel neu.`
      : `Die Scheibe von ${stage} stumpft ab: Nach den ${strokes} Hüben dieses Plans nimmt sie etwa ${say.number(roundPercent(data.share))} % von dem, was sie jetzt nimmt. Schleif zwischendurch wieder eine Probefacette, oder geh nach der Breite.`;
  },
  "nothing-to-grind": () => "Diese Reihe hat keine Tiefe: Es gibt nichts zu schleifen.",
  "coarse-beside-polished": ({ data }, say) =>
    `Sie wird mit ${say.stage(data.stage)} dicht neben polierten Facetten von ${say.tier(data.polishedTier)} geschliffen. Wasch vorher Stück, Scheibe und Hände, oder deck die Politur ab.`,
  "turned-over-often": ({ data }) =>
    `In dieser Folge wird das Stück ${data.turnOvers}-mal umgedreht, und jedes Mal kostet Genauigkeit. Schleif zuerst alle Reihen einer Seite.`,
  "cut-before-turning": ({ data, tier = "" }, say) =>
    `Sie geht schon vor dem Umdrehen, der Arm um ${say.angleOf(tier)} nach oben gekippt: Drehpunkt ${say.length(data.pivotHeightMm)} über der Fläche, Arm ${say.length(data.armLengthMm)}.`,
  "radius-inside-band": ({ data }, say) =>
    `Außer Reichweite: Die Facette läge ${say.length(data.needsMm)} von der Scheibenmitte, und das gute Band beginnt bei ${say.length(data.limitMm)}.`,
  "radius-outside-band": ({ data }, say) =>
    `Außer Reichweite: Die Facette läge ${say.length(data.needsMm)} von der Scheibenmitte, und das gute Band endet bei ${say.length(data.limitMm)}.`,
  "pivot-too-low": ({ data }, say) =>
    `Außer Reichweite: Der Drehpunkt stünde auf ${say.length(data.needsMm)}, sein tiefster Platz ist ${say.length(data.limitMm)}.`,
  "pivot-too-high": ({ data }, say) =>
    `Außer Reichweite: Der Drehpunkt stünde auf ${say.length(data.needsMm)}, sein höchster Platz ist ${say.length(data.limitMm)}.`,
  "other-arm-length": ({ data }, say) =>
    `In Reichweite mit dem Arm auf ${say.length(data.armLengthMm)}: Drehpunkt ${say.length(data.pivotHeightMm)} hoch, ${say.length(data.contactRadiusMm)} von der Scheibenmitte.`,
  "extension-needed": ({ data }, say) =>
    `Ein Arm von ${say.length(data.lengthMm)}, ${say.length(data.byMm)} länger, würde reichen.`,
  "shorter-arm-needed": ({ data }, say) =>
    `Ein Arm von ${say.length(data.lengthMm)}, ${say.length(-data.byMm)} kürzer, würde reichen.`,
  "guide-by-hand": ({ data }, say) => {
    const how =
      data.leanDeg === 0
        ? "senkrecht in einem rechtwinkligen Führungsblock"
        : `in einem um ${say.degrees(data.leanDeg)} schräg gebohrten Führungsblock`;
    const until =
      data.caliperMm === null
        ? `die Facette ${say.length(data.widthMm)} breit ist`
        : `die Schieblehre, eine Backe flach auf der Facette, ${figures(data.caliperMm, say)} misst`;
    return `Anders: Halt den Kittstock ${how} auf der Scheibe und hör auf, wenn ${until}.`;
  },
  "hits-lap": ({ data }, say) =>
    `${PARTS[data.part]} stünde ${say.length(data.overlapMm)} tief in der Scheibe, bevor die Facette fertig ist.`,
  "facet-over-rim": ({ data }, say) =>
    `Die Facette hängt ${say.length(data.overMm)} über den Rand der Scheibe.`,
  "facet-over-dead-centre": () => "Die Facette liegt quer über der Scheibenmitte, wo die Fläche stillsteht.",
  undetermined: ({ data }, say) => {
    const what =
      data.angleFromPlan && data.depthFromPlan ? "Winkel und Tiefe" : data.angleFromPlan ? "Winkel" : "Tiefe";
    const open = `Diese Messungen lassen ${what} offen, der Plan springt ein.`;
    const help = data.wouldHelp;
    return help === null
      ? open
      : `${open} Messen ${measures[help.measure]} würde am meisten helfen: dann plus oder minus ${deviation(help.armAngleSdDeg, say)} und ${say.length(help.depthSdMm)}.`;
  },
  "measurements-disagree": ({ data: { measure, measured: read, fitted } }, say) =>
    `Das Ergebnis ${measures[measure]} (${measured(measure, read, say)}) passt nicht zum Rest, der ${measured(measure, fitted, say)} sagt. Miss noch einmal.`,
  "facet-too-deep": ({ data, facets = [] }, say) =>
    `${facets.map(say.facet).join()} ging ${say.length(data.extraMm)} tiefer als ihre Reihe.`,
};
