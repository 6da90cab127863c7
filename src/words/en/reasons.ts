/** Why a depth rule can't be met. */
import type { ReasonWords } from "../reasons.ts";

export const reasons: ReasonWords = {
  single: () => "one facet alone has no neighbour in its tier",
  "same-place": () => "all its facets stand in one place",
  "already-closer": ({ got }, say) =>
    `its neighbours stand only ${say.length(got)} apart before they are cut`,
  "never-shared": () => "its neighbours share no edge at any depth",
  "too-long": ({ got, armAngleDeg, count }, say) =>
    `at ${say.armAngle(armAngleDeg)} ${count} facets can share at most ${say.length(got)}`,
  "too-wide": ({ got, armAngleDeg, count }, say) =>
    `at ${say.armAngle(armAngleDeg)} ${count} facets can be at most ${say.length(got)} wide here`,
  covered: () => "earlier tiers have taken all the glass it would stand on",
  "no-corners": ({ other }, say) =>
    `neighbours in ${say.tier(other)} neither touch nor share edges, so there are no corners`,
  "open-below": ({ got, other }, say) =>
    `neighbours in ${say.tier(other)} stand ${say.length(got)} apart, so skin runs through between them`,
  "ground-away": ({ other }, say) => `nothing is left of ${say.tier(other)}`,
  "stays-open": ({ other }, say) => `round skin stays open toward ${say.tier(other)} at every depth`,
  "nothing-between": ({ other }, say) =>
    `no round skin lies between it and ${say.tier(other)}, so there is nothing to close`,
};
