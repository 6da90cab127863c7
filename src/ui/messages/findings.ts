/** Findings in the words, units and names of the screen. A code without words here falls back to the finding's own English. */
import { READS_AS_NOTHING_MM } from "../../core/check/findings-facets.ts";
import type { Plan } from "../../core/plan/document.ts";
import { nearestStop, stopsOf, zeroOf } from "../../core/plan/place.ts";
import { toleranceOf } from "../../core/plan/solve.ts";
import type { Finding } from "../../core/plan/solved.ts";
import { findings as de } from "../../words/de/findings.ts";
import { findings as en } from "../../words/en/findings.ts";
import { dictionary, type Translated } from "../../words/language.ts";
import type { Formats } from "../use-format.ts";

export const findingWords = dictionary(en, de);
type Words = Translated<typeof en>;

/** Everything a sentence needs, read from a finding's data as what it should be. */
function readerOf(finding: Finding, words: Words, format: Formats, plan: Plan) {
  const { data } = finding;
  const number = (key: string): number => (typeof data[key] === "number" ? data[key] : 0);
  const text = (key: string): string => (typeof data[key] === "string" ? data[key] : "");
  const list = (key: string): readonly unknown[] => (Array.isArray(data[key]) ? data[key] : []);
  const tierName = (id: string): string => {
    const tier = plan.tiers.find((one) => one.id === id);
    return tier?.name || id;
  };
  const facetName = (id: string): string => {
    const cut = id.lastIndexOf("/");
    return words.facetOf(tierName(id.slice(0, cut)), id.slice(cut + 1));
  };
  // Small lengths are told to a hundredth, others as calipers give them.
  const length = (value: number): string => format.length(value, Math.abs(value) < 1 ? 2 : 1);
  const mm = (key: string): string => length(number(key));
  const deg = (key: string): string => format.degrees(number(key), 1);
  const facets = words.someFacets(finding.facets?.length ?? 0);
  const isOneFacet = finding.facets?.length === 1;
  return { number, text, list, tierName, facetName, length, mm, deg, facets, isOneFacet };
}
type Reader = ReturnType<typeof readerOf>;

function unmet(read: Reader, words: Words, format: Formats): string {
  const rule = read.text("rule") as keyof Words["wish"];
  const why = read.text("why") as keyof Words["why"];
  const other = read.tierName(read.text("other"));
  const wish = words.wish[rule](read.mm("asked"), other);
  const reason = words.why[why](
    read.mm("got"),
    format.armAngle(read.number("armAngleDeg")),
    String(read.number("count")),
    other,
  );
  const depthMm = read.number("depthMm");
  return words.ruleUnmet(wish, reason, depthMm > 0 ? format.length(depthMm, 2) : null);
}

const skinBetween = (finding: Finding, read: Reader, words: Words): string => {
  const other = read.list("tiers").find((id) => id !== finding.tier);
  const [least, most] = [read.mm("leastMm"), read.mm("mostMm")];
  return words.skinBetween(
    read.tierName(String(other ?? "")),
    least === most ? least : words.range(least, most),
  );
};

/** Wheels to name: as many as one looks through. */
const WHEELS_NAMED = 4;

function wheelSplits(finding: Finding, read: Reader, words: Words, format: Formats, plan: Plan): string {
  const { startDeg } = finding.data;
  const tier = plan.tiers.find(({ id }) => id === finding.tier);
  const stops = tier ? stopsOf(plan, tier.side) : null;
  const ways = [
    typeof startDeg === "number" && tier && stops !== null
      ? words.startKeeps(String(nearestStop(startDeg, stops, zeroOf(plan, tier.side))))
      : "",
    read.list("wheels").length > 0
      ? words.wheelsKeep(read.list("wheels").slice(0, WHEELS_NAMED).join(", "))
      : words.noWheelKeeps,
  ].filter((said) => said !== "");
  const said = words.wheelSplits(
    format.degrees(read.number("movedDeg"), 2),
    read.number("corners"),
    read.number("pairs"),
    read.mm("missMm"),
  );
  return [said, ...ways].join(" ");
}

/** One full sentence or two. */
export function findingInWords(finding: Finding, words: Words, format: Formats, plan: Plan): string {
  const read = readerOf(finding, words, format, plan);
  const { mm, deg, facets, isOneFacet, number, text } = read;
  switch (finding.code) {
    case "rule-unmet":
      return unmet(read, words, format);
    case "overshoot":
      return words.overshoot(facets, mm("worstMm"), isOneFacet);
    case "uneven":
      return words.uneven(
        String(number("count")),
        String(number("stops")),
        deg("errorDeg"),
        mm("gapMm"),
        read
          .list("counts")
          .filter((count) => Number(count) >= 2 && Number(count) <= 120)
          .join(", "),
      );
    case "start-moved":
      return words.startMoved(
        format.degrees(Math.abs(number("movedDeg")), 2),
        format.degrees(number("placedDeg"), 2),
        number("movedDeg") < 0,
      );
    case "wheel-splits":
      return wheelSplits(finding, read, words, format, plan);
    case "duplicate":
      if (number("count") > 1) return words.duplicates(String(number("count")), read.tierName(text("other")));
      return words.duplicate(read.facetName(text("swallowed")), read.facetName(text("keeps")));
    case "near-duplicate":
      if (number("count") > 1)
        return words.nearDuplicates(
          String(number("count")),
          read.tierName(text("other")),
          deg("apartDeg"),
          mm("apartMm"),
        );
      return words.nearDuplicate(
        read.facetName(finding.facets?.[1] ?? ""),
        read.facetName(finding.facets?.[0] ?? ""),
        deg("apartDeg"),
        mm("apartMm"),
      );
    case "swallowed":
      if (number("neededMm") - number("depthMm") < READS_AS_NOTHING_MM)
        return words.onlyTouches(facets, mm("depthMm"), isOneFacet);
      return words.swallowed(facets, mm("depthMm"), mm("neededMm"));
    case "lost":
      return words.lost(
        facets,
        read
          .list("by")
          .map((id) => read.tierName(String(id)))
          .join(", "),
        isOneFacet,
      );
    case "sliver":
      return words.sliver(facets, mm("leastMm"), read.length(toleranceOf(plan)), isOneFacet);
    case "near-miss":
      return words.nearMiss(words.corners(number("count")), mm("missMm"), number("count") === 1);
    case "short-edge":
      return words.shortEdge(words.edges(number("count")), mm("longestMm"), number("count") === 1);
    case "skin-between":
      return skinBetween(finding, read, words);
    case "under-dop":
      return words.underDop(facets, mm("byMm"), mm("fitsMm"), isOneFacet);
    case "inside-broken":
      return words.insideBroken(read.length(-number("leastMm")), mm("depthThatClearsMm"));
    case "inside-thin":
      return words.insideThin(mm("leastMm"), mm("depthThatClearsMm"));
    case "vanished":
      return words.vanished;
    default:
      return finding.text;
  }
}
