/** What findings say, by code. */

import type { PlanFindingData } from "../../core/plan/finding.ts";
import type { CauseWords, FindingWords, MendedWords } from "../findings.ts";
import { namedWheels, usableCounts } from "../lists.ts";
import { reasonInWords, wishInWords } from "../reasons.ts";
import type { Say } from "../say.ts";
import { counted, plural } from "./counted.ts";
import { reasons } from "./reasons.ts";
import { rules } from "./rules.ts";

type Some = readonly string[] | undefined;
const facetsOf = (some: Some): string => counted.facets(some?.length ?? 0);
/** A word that goes with a number of facets. */
const by = (some: Some, one: string, other: string): string => plural(some?.length ?? 0, { one, other });

/** "12 corners and 1 pair of neighbours no longer meet and miss by up to 0.31 mm" */
const lost = (data: PlanFindingData["edit-splits"], say: Say): string => {
  const pairs = plural(data.pairs, {
    one: "1 pair of neighbours",
    other: `${data.pairs} pairs of neighbours`,
  });
  const what = [data.corners === 0 ? "" : counted.corners(data.corners), data.pairs === 0 ? "" : pairs];
  const meet = plural(data.corners + data.pairs, { one: "meets and misses", other: "meet and miss" });
  return `${what.filter((part) => part !== "").join(" and ")} no longer ${meet} by up to ${say.length(data.missMm)}`;
};

export const findings: FindingWords = {
  "rule-unmet": ({ data }, say) =>
    `It can't ${wishInWords(data, rules, say)}: ${reasonInWords(data, reasons, say)}. ${
      data.depthMm > 0
        ? `It is drawn at ${say.fine(data.depthMm)}.`
        : "It keeps its angle and its rule, and isn't cut."
    }`,
  overshoot: ({ data, facets: some }, say) =>
    `${facetsOf(some)} ${by(some, "passes its", "pass their")} corner by up to ${say.length(data.worstMm)}: not all corners lie equally deep.`,
  uneven: ({ data }, say) =>
    `${data.count} facets don't divide a wheel of ${data.stops} stops: they stand up to ${say.degrees(data.errorDeg)} off, which changes gaps by ${say.length(data.gapMm)}. This wheel can do ${usableCounts(data.counts)}.`,
  "start-moved": ({ data }, say) =>
    `It starts between two stops: the wheel puts it ${say.degrees(Math.abs(data.movedDeg), 2)} ${data.movedDeg < 0 ? "back" : "further"}, at ${say.degrees(data.placedDeg, 2)}.`,
  "wheel-splits": ({ data, tier }, say) => {
    const stop = data.startDeg === null || tier === undefined ? null : say.stop(tier, data.startDeg);
    return [
      `The wheel's stops move it by ${say.degrees(data.movedDeg, 2)}: ${lost(data, say)}.`,
      stop === null ? "" : `Started at stop ${stop}, all meet.`,
      data.wheels.length > 0
        ? `On a wheel with ${namedWheels(data.wheels)} stops all meet.`
        : "No wheel has stops at all these places.",
    ]
      .filter((said) => said !== "")
      .join(" ");
  },
  "edit-splits": ({ data }, say) => `Since the last change ${lost(data, say)}.`,
  duplicate: ({ data }, say) =>
    data.count > 1
      ? `${data.count} facets are the very same flats as in ${say.tier(data.other)}, which keep the face.`
      : `${say.facet(data.swallowed)} is the very same flat as ${say.facet(data.keeps)}, which keeps the face.`,
  "near-duplicate": ({ data, facets: some }, say) =>
    data.count > 1
      ? `${data.count} flats of ${say.tier(data.other)} are cut a second time here, ${say.degrees(data.apartDeg)} and ${say.length(data.apartMm)} apart at the most.`
      : `${say.facet(some?.[1] ?? "")} and ${say.facet(some?.[0] ?? "")} are one flat cut twice: ${say.degrees(data.apartDeg)} and ${say.length(data.apartMm)} apart.`,
  swallowed: ({ data, facets: some }, say) =>
    say.isNothing(data.neededMm - data.depthMm)
      ? `At ${say.length(data.depthMm)} ${facetsOf(some)} only ${by(some, "touches the glass and takes", "touch the glass and take")} nothing off.`
      : `At ${say.length(data.depthMm)} there is no glass for ${facetsOf(some)}: it begins ${say.length(data.neededMm)} below the round surface.`,
  lost: ({ data, facets: some }, say) =>
    `${facetsOf(some)} ${by(some, "is", "are")} ground away again by ${data.by.map(say.tier).join(", ")}.`,
  sliver: ({ data, facets: some }, say) =>
    `${facetsOf(some)} ${by(some, "is a sliver", "are slivers")}, ${say.length(data.leastMm)} at the least: thinner than the ${say.length(data.toleranceMm)} you permit.`,
  "near-miss": ({ data }, say) =>
    `${counted.corners(data.count)} nearly ${plural(data.count, { one: "comes to a point but misses", other: "come to a point but miss" })} by ${say.length(data.missMm)}.`,
  "corners-left": ({ data }, say) =>
    `${data.count} of the ${data.all} corners of ${say.tier(data.of)} ${plural(data.count, { one: "is", other: "are" })} left out, by up to ${say.length(data.missMm)}: the number of facets doesn't go with them.`,
  "short-edge": ({ data }, say) =>
    `${counted.edges(data.count)} ${plural(data.count, { one: "is", other: "are" })} ${say.length(data.longestMm)} or shorter and ${plural(data.count, { one: "looks like a point", other: "look like points" })}.`,
  "skin-between": ({ data, tier }, say) => {
    const other = data.tiers.find((id) => id !== tier) ?? data.tiers[0];
    const [least, most] = [say.length(data.leastMm), say.length(data.mostMm)];
    return `Round skin is left between it and ${say.tier(other)}, ${least === most ? least : `${least} to ${most}`} wide.`;
  },
  "under-dop": ({ data, facets: some }, say) =>
    `${facetsOf(some)} ${by(some, "runs", "run")} ${say.length(data.byMm)} under the dop. ${say.isNothing(data.fitsMm) ? "No dop clears it." : `A dop of ${say.length(data.fitsMm)} would just clear.`}`,
  "inside-broken": ({ data }, say) =>
    `It breaks ${say.length(-data.leastMm)} into the design inside. At ${say.length(data.depthThatClearsMm)} deep it stays clear.`,
  "inside-thin": ({ data }, say) =>
    `Only ${say.length(data.leastMm)} of glass is left over the design inside. At ${say.length(data.depthThatClearsMm)} deep there is enough.`,
  "inside-outside": ({ data }, say) =>
    `The design inside reaches ${say.length(data.byMm)} out of the glass: what lies outside isn't there.`,
  "picture-missing": ({ data }) =>
    `The inside shows the picture “${data.picture}”, but it didn't come along with the plan (links carry no pictures). Nothing is seen there until it is given one.`,
  vanished: () => "Nothing is left of the piece: some facets are cut deeper than the glass is thick.",
};

/** The same in a few words, as what stands against the piece. */
export const causes: CauseWords = {
  "rule-unmet": (tier) => `${tier} can't do what it should`,
  vanished: () => "nothing is left of the piece",
  "under-dop": (tier) => `${tier} runs under the dop`,
  "inside-broken": (tier) => `${tier} breaks into the design inside`,
  "inside-thin": (tier) => `${tier} leaves little glass over the design inside`,
  uneven: (tier) => `${tier} doesn't divide the wheel`,
  duplicate: (tier) => `${tier} cuts the same flats again`,
  "near-duplicate": (tier) => `${tier} cuts the same flats again`,
  swallowed: (tier) => `${tier} doesn't reach the glass everywhere`,
  lost: (tier) => `facets of ${tier} are ground away again`,
  sliver: (tier) => `${tier} has slivers`,
  overshoot: (tier) => `${tier} passes its corners`,
  "start-moved": (tier) => `${tier} starts between two stops`,
  "wheel-splits": (tier) => `${tier} is moved by the wheel`,
  "edit-splits": (tier) => `${tier} no longer meets as before`,
  "near-miss": (tier) => `${tier} nearly comes to its corners`,
  "corners-left": (tier) => `${tier} leaves corners out`,
  "short-edge": (tier) => `${tier} has very short edges`,
  "skin-between": (tier) => `round skin is left beside ${tier}`,
  "inside-outside": () => "the design inside reaches out of the glass",
  "picture-missing": () => "the inside lacks the picture it shows",
};

/** What is gained when it is mended. */
export const mended: MendedWords = {
  "rule-unmet": "it can be done",
  uneven: "the wheel divides it evenly",
  "start-moved": "it stands on a stop",
  "wheel-splits": "all meet again",
  "edit-splits": "what met meets again",
  duplicate: "no flat is cut twice",
  "near-duplicate": "no flat is cut twice",
  overshoot: "no facet passes its corner",
  swallowed: "every facet shows",
  lost: "every facet stays",
  sliver: "no slivers are left",
  "short-edge": "no short edges are left",
  "near-miss": "the corners come to a point",
  "corners-left": "every corner is met",
  "skin-between": "the band closes",
  "under-dop": "it stays clear of the dop",
  "inside-broken": "the design inside stays whole",
  "inside-thin": "enough glass stays over the design",
  vanished: "glass is left",
  "inside-outside": "the design inside lies within the glass",
  "picture-missing": "the picture shows",
};
