/** Words of the work in its order: ways through it, strokes, time, tests of a disc. */
import { counted, lostPairs, plural } from "../counted.ts";

export const work = {
  work: {
    before: "Before the first cut",
    showGuesses: "Show strokes as rough guesses where nothing is calibrated",
    tierLine: (count: number, angle: string, side: string) =>
      `${counted.facets(count)} at ${angle} on the ${side}`,
    noRig: (finished: string) =>
      `${finished} Put in your arm and lap under Set-up for pivot height and reach.`,
    pivot: (height: string, arm: string, radius: string) =>
      `Pivot ${height} above the grinding surface, arm at ${arm}: the facet lies ${radius} from the lap's centre.`,
    tipsUp: (touch: string, end: string) =>
      `The arm points ${touch} up at first touch and dips ${end} when the facet is done.`,
    dips: (touch: string, end: string) =>
      `The arm dips ${touch} at first touch and ${end} when the facet is done.`,
    noTouch: "At this height the arm can't rest on the round marble: begin higher and come down.",
    speed: (ms: string) => `The surface passes at ${ms} m/s.`,
    perDegree: (mm: string) => `One degree of arm angle is ${mm} of pivot height here.`,
    againCosts: (deg: string, mm: string) => `Found again ${deg} off, a clean face takes ${mm} more depth.`,
    againEdge: (mm: string, longer: boolean) => `Shared edges get ${mm} ${longer ? "longer" : "shorter"}.`,
    againGap: (mm: string, wider: boolean) => `Gaps get ${mm} ${wider ? "wider" : "narrower"}.`,
    againMiss: (mm: string) => `Corners come apart by up to ${mm}.`,
    againLost: (pairs: number) => (pairs === 0 ? "Everything that met still meets." : lostPairs(pairs)),
    finish: "This tier is left",
    endsHere: (finish: string) => `The last one here: this tier stays ${finish}.`,
    notHere: (finish: string) => `Not on this tier: it stays ${finish}.`,
    stopAt: (mm: string) => `Stop at ${mm} wide.`,
    whileGround: (widths: string) =>
      `While you grind, the first facet has no neighbour yet: ${widths} in turn.`,
    whileGroundMany: (first: string, last: string) =>
      `While you grind, from ${first} on the first facet to ${last} on the last; each stop says its own below.`,
    takenAlready: "Leave this one out: at this depth earlier tiers have taken all of it already.",
    stopTaken: "nothing left here",
    skip: "Leave this one out: it would damage deeper than the tier goes.",
    polishEnds: "Until no grey shows under a loupe, at a slant against a lamp.",
    notCalibrated: "Strokes not calibrated: go by the width.",
    strokes: (n: number) => plural(n, { one: "About 1 stroke.", other: `About ${n} strokes.` }),
    strokesRange: (least: number, most: number) => `About ${least} to ${most} strokes a facet.`,
    guess: (said: string) => `A guess: ${said.charAt(0).toLowerCase()}${said.slice(1)}`,
    atStage: "Look at",
    pieceAfter: (tier: string, stage: string) => `The piece after ${stage} on ${tier}`,
    pieceAfterCaption: "The piece after this stage",
    stops: (stage: string) => `Stop by stop, ${stage}`,
    readings: (stage: string) => `Reading by reading, ${stage}`,
    facetAt: (k: string) => `Facet ${k}: `,
    plotOf: (tier: string, from: string, to: string, strokes: string) =>
      `Width against strokes on the first facet of ${tier}: from ${from} to ${to} in about ${strokes} strokes, quickly at first, then ever slower.`,
    plotCaption: "Width against strokes on the first facet. Half of the strokes make most of the width.",
    plotGuess:
      "Width against strokes on the first facet. The number of strokes is a guess; the shape is not.",
  },
  ways: {
    title: "In which order",
    "finish-each": "Finish each tier",
    "rough-all": "Rough all, then come back",
    costs: (discs: number, arms: number, time: string) =>
      `${counted.discChanges(discs)}, ${plural(arms, { one: "the arm set once", other: `the arm set ${arms} times` })}, about ${time}.`,
    turns: (n: number) =>
      plural(n, { one: "The piece is turned over once.", other: `The piece is turned over ${n} times.` }),
    finishWhy: "Every stage of a tier before the arm moves: an angle set by eye can't be set the same twice.",
    roughWhy: "Fewer disc changes, but every angle has to be found again for every stage.",
    timeIsGuess: "The time is a guess until strokes are calibrated.",
    again: "To find an angle again",
    againOff: "It comes back within",
    againOffHow: "Half a degree is common practice, no source. Each tier below says what it costs.",
    both: (way: string, discs: number, time: string) =>
      `${way}: ${counted.discChanges(discs)}, about ${time}.`,
  },
  finishes: { ground: "ground", prepolished: "pre-polished", polished: "polished" },
  habits: {
    title: "How long things take you",
    usual:
      "Minutes by common practice, no source. Change what is different with you; it is kept with the plan.",
    own: "Your own minutes, kept with the plan. The rest is common practice, no source.",
    back: "Back to the usual ones",
    usually: (n: string) => `Usually ${n}`,
    minutes: "min",
    seconds: "s",
    prepareMin: "Before the first cut",
    setArmMin: "Set the arm",
    findAngleMin: "Find an angle again",
    discMin: "Change the disc",
    cleanMin: "Clean between grits",
    indexMin: "Turn to the next stop",
    inspectMin: "Look at one polish",
    measureMin: "Measure a tier",
    turnOverMin: "Turn the piece over",
    strokeSeconds: "One stroke",
  },
  findAgain: {
    "set-pivot-height": "Set the pivot to the height you wrote down.",
    "ink-facet": "Ink the whole face with a marker and let it dry.",
    "touch-lightly": "Touch the turning lap lightly, one stroke, wet.",
    "read-ink": "Ink left at the pole side: the arm is too flat. Ink left at the equator side: too steep.",
    "adjust-height": "Move the pivot a little: up is steeper, down is flatter.",
    "repeat-until-even": "Repeat until the ink goes evenly.",
  },
  time: {
    minutes: counted.minutes,
    hours: counted.hours,
    both: (h: number, min: number) => `${h} h ${min} min`,
  },
  preparations: {
    "choose-dop": "Pick a dop a little under half as wide as the piece, so that no facet runs under it.",
    "clean-and-cement": "Clean glass and dop, cement, let it set fully.",
    "centre-and-check-run-out":
      "Turn the piece against a pointer: centre it until it hardly circles, and note the run-out.",
    "mark-stop-zero": "Ink a line on the skin at stop 0.",
    "look-for-stress":
      "Look through crossed polarisers: bright bands mean stress. Anneal it or take another piece.",
    "warm-slowly": "Bring glass and cement to the same warmth slowly.",
    "test-facet-on-scrap":
      "Cut a test facet on scrap of the same glass, count strokes, measure its width: that calibrates.",
  },
  calibrate: {
    title: (stage: string) => `Calibrate ${stage} from a test facet`,
    what: "Cut a facet with your usual hand and count. A stroke takes about the same volume of glass each time, so one test tells all the others.",
    strokes: "Strokes",
    width: "Made it this wide",
    from: "It was before",
    diameter: "On a ball of",
    disc: "Strokes on the disc before",
    how: {
      strokes: "As you count them",
      width: "On the round skin, no neighbours",
      from: "Empty: it was uncut",
      diameter: "Empty: like the piece",
      disc: "Empty: it was new",
    },
    onDisc: (n: number) => `The disc had done ${counted.strokes(n)} before.`,
    nowOnDisc: "Strokes on the disc by now",
    nowOnDiscHow: (n: string) => `Empty: ${n}, as after the last test`,
    wear: (half: string) => `The disc dulls: every ${half} strokes it takes half as much.`,
    noWear: "No dulling shows between these tests.",
    wearHow:
      "A disc dulls. Test it again when it is older and say how many strokes it had done: the strokes follow. That it halves in equal steps is a rule of thumb, no source.",
    resultNow: (mm3: string) => `As it is now, a stroke takes about ${mm3} mm³ in the middle of the band.`,
    odd: "The facet can't have become narrower, or wider than its ball.",
    add: "Keep this test",
    forget: "Forget",
    test: (n: number, from: string, to: string, ball: string) =>
      `${counted.strokes(n)}: from ${from} to ${to} on a ball of ${ball}.`,
    result: (mm3: string) => `A stroke takes about ${mm3} mm³ in the middle of the band.`,
    oneTest: "From one test; a second one shows how far you scatter.",
    twoTests: "A third test shows how far you scatter.",
    spread: (percent: string) => `Your tests scatter by ${percent} %.`,
  },
} as const;
