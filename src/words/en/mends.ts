/** What a mend changes, and what comes of it. */
import type { MendWords } from "../mends.ts";
import { askedOf } from "../rules.ts";
import { rules } from "./rules.ts";

export const mends: MendWords = {
  change: {
    angle: ({ tierId, fromDeg, deg }, say) =>
      `${deg > fromDeg ? "Raise" : "Lower"} ${say.tier(tierId)} to ${say.armAngle(deg)}`,
    depth: ({ tierId, fromMm, mm }, say) =>
      `Cut ${say.tier(tierId)} ${mm > fromMm ? "deeper" : "less deep"}, to ${say.fine(mm)}`,
    rule: ({ tierId, depth, deg }, say) => {
      const said = rules[depth.rule].mend(say.tier(tierId), askedOf(depth, say));
      return deg === undefined ? said : `${said} at ${say.armAngle(deg)}`;
    },
    count: ({ tierId, count }, say) => `Give ${say.tier(tierId)} ${count} facets`,
    start: ({ tierId, deg }, say) => {
      const stop = say.stop(tierId, deg);
      return `Start ${say.tier(tierId)} at ${stop === null ? say.degrees(deg) : `stop ${stop}`}`;
    },
    remove: ({ tierId }, say) => `Leave ${say.tier(tierId)} out`,
    dop: ({ mm }, say) => `Take a dop of ${say.length(mm)}`,
    wheel: ({ stops }) => `Take a wheel of ${stops} stops`,
  },
  mend: (change, effect) => `${change}: ${effect}`,
  depth: ({ tierId, fromMm, mm }, say) =>
    `${say.tier(tierId)} ${say.fine(Math.abs(mm - fromMm))} ${mm > fromMm ? "deeper" : "less deep"}`,
  noDepth: "no depth changes",
  glassGoes: (share) => `${share} of the glass goes`,
  glassStays: (share) => `${share} more glass stays`,
  noGlass: "no glass lost",
  narrowest: (length) => `narrowest facet ${length}`,
  changesToo: (tiers) => `changes with it: ${tiers}`,
  doubts: {
    thin: "Leaves a facet that is hardly there.",
    glass: "Costs more than a fifth of the glass.",
    brings: (causes) => `Then look at this: ${causes}.`,
  },
};
