/** Words of what was measured on the cut piece, and of a chip. */

import { counted, plural } from "../counted.ts";
import { measures } from "../measures.ts";

export const asCut = {
  asCut: {
    what: "Type in what you measured on a finished tier, before the next one is cut. The tiers still to cut are solved again so that they meet it.",
    failed: "The measurements could not be worked out. They are kept; check for a slip.",
    tierLine: (count: number, angle: string) => `${counted.facets(count)}, planned at ${angle}`,
    measure: "Type in measurements",
    measured: "Measurements",
    measureWhat: "Any of these; each is the mean over the tier. Leave the rest empty.",
    fields: {
      widthMm: "Facet width",
      heightMm: "Facet height",
      gapMm: "Gap between neighbours",
      edgeMm: "Shared edge",
      acrossMm: "Across the pole",
      flatToSkinMm: "Flat to skin",
      caliperMm: "Calipers",
      readDeg: "Angle as read",
      pivotHeightMm: "Pivot height",
      armLengthMm: "Arm length",
    },
    how: {
      widthMm: "Widest, along the ring",
      heightMm: "Pole side to equator side",
      gapMm: "Along the skin; below 0 where they overlap",
      edgeMm: "Length of the line two neighbours share",
      acrossMm: "Calipers over the pole, between upper ends of opposite facets",
      flatToSkinMm: "Calipers, facet to the round skin opposite",
      caliperMm: "One jaw flat on the facet, the other at the farthest point opposite",
      readDeg: "Arm angle, from the scale or a protractor",
      pivotHeightMm: "Surface to hinge pin, facet lying flat",
      armLengthMm: "Hinge pin to the marble's centre",
    },
    measures,
    sd: "Calipers are good to",
    sdHow: "One deviation",
    readSd: "Angle is read to",
    readSdHow: "One deviation",
    single: "One facet by itself",
    whichFacet: "Facet",
    facet: (k: string) => `Facet ${k}`,
    facetStop: (k: string, stop: string) => `Facet ${k}, stop ${stop}`,
    measuredAlready: "measured",
    fits: (angle: string, angleSd: string, depth: string, depthSd: string) =>
      `Cut at ${angle} (give or take ${angleSd}), ${depth} deep (give or take ${depthSd}).`,
    planned: (angle: string, depth: string) => `Planned: ${angle}, ${depth} deep.`,
    locked: "The plan holds this tier as it was cut.",
    wouldHelp: (what: string, deg: string, mm: string) =>
      `Measuring ${what} would narrow it most: to ${deg} and ${mm}.`,
    tooDeep: (k: string, mm: string) => `Facet ${k} went ${mm} deeper than its tier.`,
    toMatch: "Bringing the rest to match:",
    change: (tier: string, deeper: string, isDeeper: boolean, wider: string, isWider: boolean) =>
      `${tier} goes ${deeper} ${isDeeper ? "deeper" : "less deep"} and comes out ${wider} ${isWider ? "wider" : "narrower"}.`,
    stillMeets: "Everything that met still meets.",
    noLongerMeets: (pairs: number) =>
      pairs === 0
        ? "A rule of the plan can't be met any more."
        : plural(pairs, {
            one: "1 pair that met no longer does.",
            other: `${pairs} pairs that met no longer do.`,
          }),
    deepenAll: (mm: string) => `Take the whole tier to ${mm}`,
    remaining: "Tiers still to cut",
    allCut: "Every tier has been measured: nothing is left to cut.",
    stays: (tier: string, mm: string) => `${tier} stays at ${mm} deep.`,
    goes: (tier: string, before: string, after: string) => `${tier} goes from ${before} to ${after} deep.`,
    cantMeet: "Its rule can't be met any more; this is the nearest that can.",
    cant: (tier: string) => `${tier} can't be reached from what was cut. It keeps its angle and its rule.`,
    follow: {
      title: "Follow what was cut",
      searching: (percent: string) => `Looking for the least change of angles: ${percent} %`,
      stop: "Stop",
      look: "Look for the least change of angles",
      failed: "The search for other angles failed. What was measured is kept.",
      depthAlone: "With the depths above, everything that met meets again. No angle has to change.",
      least: "With these angles, the least change that will do, everything that met meets again:",
      most: (pairs: number, corners: number) =>
        `No turn of up to 10° keeps everything. This keeps most; lost ${plural(pairs + corners, {
          one: "is",
          other: "are",
        })} ${[
          ...(pairs > 0 ? [counted.pairs(pairs)] : []),
          ...(corners > 0 ? [counted.corners(corners)] : []),
        ].join(" and ")}.`,
      mostAsIs: (pairs: number, corners: number) =>
        `No turn of up to 10° keeps more than the angles as planned: ${[
          ...(pairs > 0 ? [counted.pairs(pairs)] : []),
          ...(corners > 0 ? [counted.corners(corners)] : []),
        ].join(" and ")} that met can't any more.`,
      angle: (tier: string, before: string, after: string) => `${tier}: ${before} becomes ${after}`,
      depth: (before: string, after: string) => `depth ${before} becomes ${after}`,
      pivot: (before: string, after: string) => `pivot height ${before} becomes ${after}`,
      take: "Take these angles",
      planned: "As planned",
      adjusted: "After what was cut",
    },
    lock: "Lock as cut and solve the rest",
    allLocked: "What was cut is locked; the tiers above follow it.",
  },
  chip: {
    title: "A chip on the finished piece",
    what: "Say where it lies and how large it is, and see the smallest recut that takes it away. Look for cracks that run on before you grind.",
    tier: "On tier",
    facet: "On facet",
    across: "To the right of the middle",
    acrossHow: "Seen from outside, pole up; below 0 is left",
    up: "Towards the pole",
    upHow: "From the facet's middle; below 0 is away from it",
    depth: "Deep",
    depthHow: "From the facet down to the chip's bottom",
    diameter: "Across",
    diameterHow: "The chip's widest",
    none: "No recut takes it away: it is outside the finished piece, or would go to the middle.",
    way: (tier: string, k: string, mm: string) => `Take ${tier} ${mm} deeper; facet ${k} clears the chip.`,
    dear: (times: string) => `This takes ${times} times as much glass as the first way.`,
    intoInside: (mm: string) => `This breaks ${mm} into the design inside.`,
    take: "Plan this recut",
  },
} as const;
