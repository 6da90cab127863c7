/** What findings say, by code. Tiers come by name, lengths and angles already formatted. */
export const findings = {
  someFacets: (count: number) => (count === 1 ? "1 facet" : `${count} facets`),
  wish: {
    depth: (asked: string) => `be ${asked} deep`,
    width: (asked: string) => `be ${asked} wide`,
    gap: (asked: string) => `leave gaps of ${asked}`,
    touch: () => "just touch",
    edge: (asked: string) => `share edges of ${asked}`,
    close: (_asked: string, other: string) => `close up to ${other}`,
    corners: (_asked: string, other: string) => `come to the corners of ${other}`,
  },
  why: {
    single: () => "one facet alone has no neighbour in its tier",
    "same-place": () => "all its facets stand in one place",
    "already-closer": (got: string) => `its neighbours stand only ${got} apart before they are cut`,
    "never-shared": () => "its neighbours share no edge at any depth",
    "too-long": (got: string, angle: string, count: string) =>
      `at ${angle} ${count} facets can share at most ${got}`,
    "too-wide": (got: string, angle: string, count: string) =>
      `at ${angle} ${count} facets can be at most ${got} wide here`,
    covered: () => "earlier tiers have taken all the glass it would stand on",
    "no-corners": (_got: string, _angle: string, _count: string, other: string) =>
      `neighbours in ${other} neither touch nor share edges, so there are no corners`,
    "open-below": (got: string, _angle: string, _count: string, other: string) =>
      `neighbours in ${other} stand ${got} apart, so skin runs through between them`,
    "ground-away": (_got: string, _angle: string, _count: string, other: string) =>
      `nothing is left of ${other}`,
    "stays-open": (_got: string, _angle: string, _count: string, other: string) =>
      `round skin stays open toward ${other} at every depth`,
  },
  /** `depth` is that of the nearest that can be done; null where nothing can. */
  ruleUnmet: (wish: string, why: string, depth: string | null) =>
    `It can't ${wish}: ${why}. ${depth === null ? "It keeps its angle and its rule, and isn't cut." : `It is drawn at ${depth}.`}`,
  overshoot: (facets: string, worst: string, isOne: boolean) =>
    `${facets} ${isOne ? "passes its" : "pass their"} corner by up to ${worst}: not all corners lie equally deep.`,
  uneven: (count: string, stops: string, off: string, gap: string, counts: string) =>
    `${count} facets don't divide a wheel of ${stops} stops: they stand up to ${off} off, which changes gaps by ${gap}. This wheel can do ${counts}.`,
  startMoved: (moved: string, placed: string, isBack: boolean) =>
    `It starts between two stops: the wheel puts it ${moved} ${isBack ? "back" : "further"}, at ${placed}.`,
  wheelSplits: (moved: string, corners: number, pairs: number, miss: string) => {
    const what = [
      corners === 0 ? "" : corners === 1 ? "1 corner" : `${corners} corners`,
      pairs === 0 ? "" : pairs === 1 ? "1 pair of neighbours" : `${pairs} pairs of neighbours`,
    ].filter((part) => part !== "");
    return `The wheel's stops move it by ${moved}: ${what.join(" and ")} no longer ${corners + pairs === 1 ? "meets and misses" : "meet and miss"} by up to ${miss}.`;
  },
  startKeeps: (stop: string) => `Started at stop ${stop}, all meet.`,
  wheelsKeep: (wheels: string) => `On a wheel with ${wheels} stops all meet.`,
  noWheelKeeps: "No wheel has stops at all these places.",
  duplicate: (facet: string, other: string) =>
    `${facet} is the very same flat as ${other}, which keeps the face.`,
  duplicates: (count: string, other: string) =>
    `${count} facets are the very same flats as in ${other}, which keep the face.`,
  nearDuplicates: (count: string, other: string, apart: string, mm: string) =>
    `${count} flats of ${other} are cut a second time here, ${apart} and ${mm} apart at the most.`,
  onlyTouches: (facets: string, depth: string, isOne: boolean) =>
    `At ${depth} ${facets} only ${isOne ? "touches the glass and takes" : "touch the glass and take"} nothing off.`,
  nearDuplicate: (facet: string, other: string, apart: string, mm: string) =>
    `${facet} and ${other} are one flat cut twice: ${apart} and ${mm} apart.`,
  swallowed: (facets: string, depth: string, needed: string) =>
    `At ${depth} there is no glass for ${facets}: it begins ${needed} below the round surface.`,
  lost: (facets: string, by: string, isOne: boolean) =>
    `${facets} ${isOne ? "is" : "are"} ground away again by ${by}.`,
  sliver: (facets: string, least: string, permitted: string, isOne: boolean) =>
    `${facets} ${isOne ? "is a sliver" : "are slivers"}, ${least} at the least: thinner than the ${permitted} you permit.`,
  nearMiss: (corners: string, miss: string, isOne: boolean) =>
    `${corners} nearly ${isOne ? "comes to a point but misses" : "come to a point but miss"} by ${miss}.`,
  corners: (count: number) => (count === 1 ? "1 corner" : `${count} corners`),
  shortEdge: (edges: string, longest: string, isOne: boolean) =>
    `${edges} ${isOne ? "is" : "are"} ${longest} or shorter and ${isOne ? "looks like a point" : "look like points"}.`,
  edges: (count: number) => (count === 1 ? "1 edge" : `${count} edges`),
  skinBetween: (other: string, wide: string) => `Round skin is left between it and ${other}, ${wide} wide.`,
  range: (least: string, most: string) => `${least} to ${most}`,
  underDop: (facets: string, by: string, fits: string, isOne: boolean) =>
    `${facets} ${isOne ? "runs" : "run"} ${by} under the dop. A dop of ${fits} would just clear.`,
  insideBroken: (by: string, depth: string) =>
    `It breaks ${by} into the design inside. At ${depth} deep it stays clear.`,
  insideThin: (left: string, depth: string) =>
    `Only ${left} of glass is left over the design inside. At ${depth} deep there is enough.`,
  vanished: "Nothing is left of the piece: some facets are cut deeper than the glass is thick.",
  facetOf: (tier: string, place: string) => `Facet ${place} of ${tier}`,
} as const;
