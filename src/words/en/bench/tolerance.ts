/** Words of what chance does to settings. */
import { counted, plural } from "../counted.ts";

export const tolerance = {
  tolerance: {
    what: "Nobody sets an angle twice the same. Say how far your settings scatter, and see how often everything would meet.",
    arm: "Arm angle scatters by",
    armHow: "One deviation: two in three settings are nearer",
    stopPlay: "Play of a stop",
    stopHow: "Turn left when the stop is in",
    depth: "Depth scatters by",
    depthHow: "From facet to facet of one tier",
    diameters: ["A second diameter", "A third diameter"],
    diameterHow: "Measured square to the first",
    own: "Your own spread, kept with the plan. Run-out is set with each dop under Set-up.",
    usual: "Common practice for a practised hand, no source. Run-out is set with each dop under Set-up.",
    run: "Cut it many times by chance",
    running: (percent: string) => `${percent} % done`,
    stop: "Stop",
    failed: "The trial could not be finished. Nothing is changed; try again.",
    stale: "The plan has changed since: this is about the plan as it was.",
    result: "What came of it",
    noPairs: "No facets of this plan are meant to meet, so there is nothing to miss.",
    alike: "Stopping by width or by depth comes to the same here.",
    widthSafer: "Stop each facet by its width: it is the safer way here.",
    depthSafer: "Stop each facet at its depth: it is the safer way here.",
    ways: { width: "Stopping by width", depth: "Stopping by depth" },
    chance: (n: number, unsure: number) => `Every pair meets on ${n} of 100 pieces (give or take ${unsure}).`,
    matters: (source: string, mm: string) => `What matters most is ${source}: it moves gaps by ${mm}.`,
    less: (others: string) => `Then ${others}.`,
    sources: {
      armAngle: "the arm angle",
      stopPlay: "the play of the stops",
      depth: "the depth",
      width: "how well you see the width",
      outOfRound: "the marble being out of round",
      runOut: "the run-out of the dop",
    },
    margin: (mm: string) => `Go ${mm} deeper everywhere, and 95 in 100 meet.`,
    marginNone: "95 in 100 meet without any margin.",
    noMargin: "No extra depth brings it to 95 in 100: mend what matters most first.",
    weakest: (a: string, b: string, n: number, mm: string) =>
      `The weakest pair is ${a} with ${b}: it meets ${plural(n, { one: "once", other: `${n} times` })} in 100, its gap scatters by ${mm}.`,
    how: (n: string, width: string, pairs: number) =>
      `From ${n} pieces cut by chance in each way, ${counted.pairs(pairs)} on each; a width is taken to be seen to ${width}.`,
  },
} as const;
