/** Words of the drawings one plans in: profile, skin, facet card, diary, counts that work. */
import { plural } from "./counted.ts";
import { names } from "./names.ts";

/** "Waist 1, Waist 2 and Shoulder 1" */
const both = (names: readonly string[]): string =>
  names.length < 2 ? names.join() : `${names.slice(0, -1).join(", ")} and ${names[names.length - 1]}`;

export const drawings = {
  tierNumber: names.tier,
  profile: "Profile",
  profileOf: (tiers: string) => `Half-section through the axis, front above. ${tiers}`,
  skin: "Skin",
  skinOf: (tiers: string) => `The round surface unrolled, front pole above, sizes true. ${tiers}`,
  front: "front",
  back: "back",
  frontPole: "front pole",
  backPole: "back pole",
  equator: "equator",
  dop: "dop",
  inkMark: "ink mark",
  empty: "Nothing is cut yet: the marble is whole.",
  tierSaid: (name: string, count: string, angle: string, meeting: string) =>
    `${name}: ${count} at ${angle}, ${meeting}.`,
  meeting: {
    edge: (mm: string) => `sharing edges of ${mm}`,
    touch: "just touching",
    gap: (mm: string) => `${mm} apart`,
    alone: "alone",
    gone: "nothing left of it",
  },
  handle: (name: string) => `${name}: arm angle and depth`,
  handleKeys:
    "Arrow up and down: arm angle. Arrow left and right: deeper and shallower. Shift: fine. Page up and down: to the next depth that meets. A typed figure and Enter: that arm angle.",
  fresh: "New tier",
  pullIn: "pull inward to cut",
  skinHandle: (name: string) => `${name}: start and arm angle`,
  skinKeys:
    "Arrow left and right: start, stop by stop. Arrow up and down: arm angle. Shift: fine. Page up and down: to the next angle that meets.",
  stop: (k: string) => `stop ${k}`,
  snap: {
    stop: (k: string) => `on stop ${k}`,
  },
  live: {
    angle: "angle",
    depth: "depth",
    width: "width",
    gap: "gap",
    edge: "edge",
    start: "start",
  },
  lost: (tier: string) => `${tier} can't keep its rule here`,
  lostWhy: (tier: string, why: string) => `${tier} can't keep its rule here. ${why}`,
  mark: {
    gap: (facets: readonly string[], mm: string) => `${both(facets)} stand ${mm} apart`,
    touch: (facets: readonly string[], _mm: string) => `${both(facets)} just touch`,
    corner: (facets: readonly string[], _mm: string) => `${both(facets)} come to one point`,
    miss: (facets: readonly string[], mm: string) =>
      `${both(facets)} nearly come to a point: they miss it by ${mm}`,
  },
  turnStrip: "Turn the strip",
  turnKeys:
    "Arrow left and right turn the strip, Shift: finely. Home brings the ink mark back to the middle.",
  markKeys: "Enter: what this tier meets, one place after another.",
  card: {
    none: "Choose a facet to lay it flat here.",
    swallowed: "Nothing is left of this facet: its neighbours take all of it.",
    roundSkin: "skin",
    wide: "wide",
    high: "high",
    print: "Print at 1:1",
    check: (mm: string) => `This bar is ${mm} long when the print is true.`,
    facet: (name: string, k: string, n: string) => `${name}, facet ${k} of ${n}`,
    setting: (angle: string, stop: string, depth: string) => `${angle}, ${stop}, ${depth} deep`,
    noStop: (deg: string) => `azimuth ${deg}`,
    seen: "seen from outside, front upward",
  },
  /** Beside a field one edits. */
  allMeets: {
    angles: (from: string, to: string, isAll: boolean) =>
      `${isAll ? "All meets" : "What meets still does"} ${from === to ? `only at ${from}` : `from ${from} to ${to}`}`,
    counts: (counts: readonly string[], isAll: boolean) =>
      `${isAll ? "All meets" : "What meets still does"} ${counts.length === 1 ? `only with ${counts[0]}` : `with ${counts.slice(0, -1).join(", ")} or ${counts.at(-1)}`}`,
  },
  suggest: {
    open: "Counts and angles that work",
    intro: (tier: string, depth: string) => `What works for ${tier} at its depth of ${depth}.`,
    edge: "Length of a shared edge",
    looking: "Looking for what works",
    none: "Nothing that meets was found for this tier. Another depth may have more to offer.",
    facets: (count: string) => `${count} facets`,
    kind: {
      touch: "just touch",
      edge: (mm: string) => `share ${mm}`,
      corners: (tier: string) => `to the corners of ${tier}`,
      "touch-at-corners": (tier: string) => `touch at the corners of ${tier}`,
    },
    choose: (count: string, angle: string, what: string) => `${count} facets at ${angle}, ${what}`,
    deep: (mm: string) => `${mm} deep`,
    gone: (facets: number) =>
      plural(facets, {
        one: "1 facet is ground away with it",
        other: `${facets} facets are ground away with it`,
      }),
  },
  diary: {
    open: "Diary of the work",
    close: "Leave the diary",
    group: "Moments of the work",
    before: "Earlier",
    after: "Later",
    uncut: "uncut",
    moment: (tier: string, k: string, width: string) => `${tier}, facet ${k}: ${width} wide now`,
    place: (tier: string, k: string) => `${tier}, facet ${k}`,
    atEnd: (width: string) => `${width} in the end`,
  },
} as const;
