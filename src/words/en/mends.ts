/** What a mend changes, and what comes of it. */
import { pluralIn } from "../language.ts";
import type { MendWords } from "../mends.ts";
import { askedOf } from "../rules.ts";
import { rules } from "./rules.ts";

const plural = pluralIn("en");

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
  brings: (mend, count) =>
    `${mend}; ${plural(count, { one: "one other thing then wants a look", other: `${count} other things then want a look` })}`,
};
