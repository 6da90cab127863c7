/** Was eine Abhilfe ändert und was dabei herauskommt. */
import type { MendWords } from "../mends.ts";
import { askedOf } from "../rules.ts";
import { rules } from "./rules.ts";

export const mends: MendWords = {
  change: {
    angle: ({ tierId, fromDeg, deg }, say) =>
      `${say.tier(tierId)} auf ${say.armAngle(deg)} ${deg > fromDeg ? "steiler" : "flacher"} stellen`,
    depth: ({ tierId, fromMm, mm }, say) =>
      `${say.tier(tierId)} ${mm > fromMm ? "tiefer" : "weniger tief"} schleifen, auf ${say.fine(mm)}`,
    rule: ({ tierId, depth, deg }, say) => {
      const said = rules[depth.rule].mend(say.tier(tierId), askedOf(depth, say));
      return deg === undefined ? said : `${said}, bei ${say.armAngle(deg)}`;
    },
    count: ({ tierId, count }, say) => `${say.tier(tierId)} mit ${count} Facetten`,
    start: ({ tierId, deg }, say) => {
      const stop = say.stop(tierId, deg);
      return `${say.tier(tierId)} bei ${stop === null ? say.degrees(deg) : `Raste ${stop}`} beginnen`;
    },
    remove: ({ tierId }, say) => `${say.tier(tierId)} weglassen`,
    dop: ({ mm }, say) => `Einen Kittstock von ${say.length(mm)} nehmen`,
    wheel: ({ stops }) => `Ein Rad mit ${stops} Rasten nehmen`,
  },
  mend: (change, effect) => `${change}: ${effect}`,
  depth: ({ tierId, fromMm, mm }, say) =>
    `${say.tier(tierId)} ${say.fine(Math.abs(mm - fromMm))} ${mm > fromMm ? "tiefer" : "weniger tief"}`,
  noDepth: "keine Tiefe ändert sich",
  glassGoes: (share) => `${share} des Glases gehen weg`,
  glassStays: (share) => `${share} mehr Glas bleibt`,
  noGlass: "kein Glas geht weg",
  narrowest: (length) => `schmalste Facette ${length}`,
  changesToo: (tiers) => `ändert sich mit: ${tiers}`,
  doubts: {
    thin: "Lässt eine Facette, die kaum zu sehen ist.",
    glass: "Kostet mehr als ein Fünftel des Glases.",
    brings: (causes) => `Danach anzusehen: ${causes}.`,
  },
};
