/** Words of the wall of ideas: the wish, the wall, and one idea. */
import { counted, plural } from "./counted.ts";
export const ideas = {
  title: "Ideas",
  intro:
    "Say what the piece should be like. Many patterns are tried for your glass and your wheel; the best of each kind comes up on the wall. All of them meet.",
  wish: {
    work: "{on}, {wheel}: {least} to {tiers} tiers with {facets} facets at most, {sides}, within {hours} hours at the lap.",
    want: "Above all it should {want}; and {also}.",
    axes: "Along the wall: {across}. Up the wall: {up}.",
    keep: "The first {keep} tiers of this plan stay as they are.",
    given: {
      open: "Open a wish file",
      opened: (file: string) => `The wish of ${file} stands above the wall`,
      unknown: (fields: string) => `Not understood, and without effect: ${fields}`,
      title: (file: string) => `A wish from the file ${file}, as it stands there:`,
      work: (on: string, wheel: string, tiers: string, facets: string, sides: string) =>
        `${on}, ${wheel}: ${tiers} tiers with ${facets} facets, ${sides}.`,
      between: (least: string, most: string) => (least === most ? least : `${least} to ${most}`),
      keep: (count: number) =>
        plural(count, {
          one: "Its first tier stays as it is.",
          other: `Its first ${count} tiers stay as they are.`,
        }),
      rings: "It is enough that each ring closes in itself.",
      limits: (list: string) => `Within these limits: ${list}.`,
      wants: (list: string) =>
        `Wanted, each with its weight from \u22121 (as little as can be) to 1 (as much): ${list}.`,
      wantsNothing: "Nothing is wanted more than anything else.",
      weight: (name: string, weight: string) => `${name} ${weight}`,
      axes: (across: string, up: string) => `Along the wall: ${across}. Up the wall: ${up}.`,
      own: "Say a wish of my own again",
    },
    gave: {
      all: (what: string) => `To stay near what it began with, this wall goes by other bounds: ${what}.`,
      leastTiers: (held: string, asked: string) => `at least ${held} tiers instead of ${asked}`,
      mostTiers: (held: string, asked: string) => `up to ${held} tiers instead of ${asked}`,
      leastFacets: (held: string, asked: string) => `at least ${held} facets instead of ${asked}`,
      mostFacets: (held: string, asked: string) => `up to ${held} facets instead of ${asked}`,
      leastTime: (held: string, asked: string) => `from ${held} hours on instead of ${asked}`,
      mostTime: (held: string, asked: string) => `up to ${held} hours instead of ${asked}`,
    },
    on: (diameter: string) => `On this marble of ${diameter}`,
    wheel: (stops: string) => `with my wheel of ${stops}`,
    noWheel: "with a free protractor",
    leastTiers: "Tiers at least",
    tiers: "Tiers at most",
    facets: "Facets at most",
    hours: "Hours at most",
    keepLabel: "Tiers that stay",
    sidesLabel: "Sides",
    sides: { front: "on the front alone", both: "on front and back" },
    wantLabel: "Above all",
    alsoLabel: "And",
    acrossLabel: "Along the wall",
    upLabel: "Up the wall",
    whole: (least: string, most: string) => `a whole number from ${least} to ${most}`,
  },
  want: {
    nothing: "nothing more",
    sparkle: "sparkle as it moves",
    back: "send light back to the eye",
    through: "let one see through",
    inside: "show what is inside",
    round: "keep much of its round skin",
    covered: "be covered in facets",
    large: "have no small facet",
    quick: "be quickly done",
  },
  axis: {
    minutes: "time at the lap",
    facets: "number of facets",
    tiers: "number of tiers",
    leastFacetMm: "smallest facet",
    skinShare: "round skin left",
    back: "light sent back",
    through: "seen through",
    inside: "inside seen",
    images: "images of the inside",
    sparkle: "sparkle",
  },
  start: "Try patterns",
  further: "Try further",
  stop: "Stop",
  trying: (tried: string, found: string) => `${tried} patterns tried, ${found} on the wall`,
  done: (tried: string, meeting: string, found: string) =>
    `${tried} patterns tried; ${meeting} of them meet, and the best ${found} are on the wall.`,
  stopped: (tried: string, found: string) =>
    `Stopped after ${tried} patterns tried. The ${found} on the wall stay.`,
  trouble: (why: string) => `The search broke off: ${why}`,
  nothing: (what: string) => `No pattern keeps this wish. In the way: ${what}.`,
  way: {
    meets: "that all tiers meet",
    limit: (name: string, share: string) => `${name} (${share} of what was tried)`,
    limitOfMeeting: (name: string, share: string) => `${name} (${share} of those that meet)`,
    never: (name: string) =>
      `${name}, which nothing keeps together with all else that is asked, so nothing was tried`,
    tiers: "the number of tiers",
    facets: "the number of facets",
  },
  wall: "The wall",
  empty: "Nothing of this kind yet",
  axisPart: (name: string, part: string) => `${name}: ${part}`,
  axisAcross: (name: string) => `${name} →`,
  one: {
    title: "This one",
    time: (hours: string, facets: number, tiers: number) =>
      `About ${hours} hours at the lap: ${counted.facets(facets)} in ${counted.tiers(tiers)}.`,
    timeUnknown: (facets: number, tiers: number) => `${counted.facets(facets)} in ${counted.tiers(tiers)}.`,
    skin: (share: string, least: string) =>
      `${share} of the round skin is left; its smallest facet is ${least} wide.`,
    light: (back: string, through: string) =>
      `Of its face ${back} sends light back, and one sees through ${through}.`,
    inside: (share: string, images: number) =>
      `What is inside fills ${share} of its face, as ${plural(images, { one: "one image", other: `${images} images` })}.`,
    sparkle: (share: string) => `For each degree that it leans ${share} of its face turns on or off.`,
    counted: "Counted on a grid of 96 by 96 rays from far away, so good to a few parts in a hundred.",
    measuring: "Being measured",
    tier: (count: string, angle: string, side: string) => `${count} at ${angle} on the ${side}`,
    sides: { front: "front", back: "back" },
  },
  deeds: {
    take: "Open as my plan",
    taken: "It is your plan now. Undo brings the one before back.",
    takenWhole:
      "It is your plan now, with the marble and the wheel that it was made for. Undo brings the one before back.",
    front: "Only the front\u2019s counts stay",
    away: "Throw away",
    between: "Between the last two held",
    customer: "Show to a customer",
    hold: "Hold it",
    letGo: "Let go",
    more: "More like this",
    shelf: "Put on the shelf",
    shelved: "Kept among your plans.",
    beside: "Lay beside my plan",
    failed: "It could not be kept; nothing is lost.",
  },
  pick: "Press a picture to see what it is and what can be done with it.",
  nearest: "Nothing mends this as it stands. Look for patterns near it that meet",
  bringBack: (count: number) =>
    plural(count, { one: "Bring back the one thrown away", other: `Bring back the ${count} thrown away` }),
  lean: "As one walks past",
  leanUntraced:
    "How it looks as one walks past takes traced pictures, which can\u2019t be made here just now.",
  leanAll: "All lean together",
  leanBy: (deg: string) => `${deg}°`,
  leaning: (done: number, of: number) => `${done} of ${of} pictures`,
  taste: {
    title: "In the order that you may like",
    what: (count: number) =>
      `Learned from ${count} ideas that you held or threw away, on this device alone. It only changes this order.`,
    few: (count: number) =>
      `${plural(count, { one: "One idea", other: `${count} ideas` })} held or thrown away so far. From three of each on, the wall is also laid out in the order that you may like; that stays on this device.`,
    later: "Once a search has come to its end.",
    forget: "Forget what I like",
  },
  measures: {
    title: "What is counted, and how",
    how: "What one sees is counted by following 96 by 96 straight rays of one colour into the polished glass, for one who stands far away: exact for each ray, a count on a grid for the whole. All else comes from the exact shape.",
    minutes:
      "Hours for the whole work in the faster order, from the bench\u2019s own times: a guess until strokes are calibrated.",
    facets: "How many facets there are to grind, poles counted as one.",
    tiers: "How many tiers there are to set up, each with an angle of its own; a pole is one too.",
    leastFacetMm: "The width of the narrowest facet: the one that a slip takes first.",
    skinShare: "How much of the ball\u2019s round surface is left.",
    back: "The share of its face that sends back light from the eye\u2019s own side, as a mean of nine leans; a count on the grid.",
    through:
      "The share of its face through which one sees what lies behind, as a mean of nine leans; a count on the grid.",
    inside:
      "The share of its face in which one sees what is inside the glass, as a mean of nine leans; a count on the grid.",
    images:
      "How many separate pictures of the inside one sees straight from the front; a count of patches on the grid.",
    sparkle:
      "How much of its face turns bright or dark for each degree of leaning, under twelve lamps all around; a count on the grid.",
    eyes: "Held against four blind rankings of 24 traced pieces (by programs that read pictures, not yet by people), as rank correlation with the range in which it lies 19 times of 20: inside seen 0.98 (0.94 to 0.99), light sent back 0.97 (0.92 to 0.99), seen through 0.95 (0.86 to 0.98), sparkle 0.87 (0.67 to 0.95), images of the inside only 0.36 (−0.07 to 0.67), which may be chance: so the wall can be laid out by them, but they are not among what one can wish for. The other measures are of shape and work, and none of them is for the eye.",
  },
  held: "Held, side by side under one light",
  heldUnkept:
    "This browser has no room for what is held, or refuses to keep it: it lasts until the page is left. Put on the shelf what is to stay.",
  undrawn: "No pictures can be traced here just now; drawings stand for them.",
  name: (name: string, number: string) => (name ? `${name}, idea ${number}` : `Idea ${number}`),
  ring: (number: string) => `Ring ${number}`,
  pole: "Pole",
} as const;
