/** Published measures of solids that facet patterns make, with their sources. `status`: how the value was had. */

export interface PublishedSolid {
  readonly source: string;
  readonly status: "read" | "memory" | "computed";
  readonly faces: number;
  readonly edges: number;
  readonly vertices: number;
  readonly volume: number;
  readonly area: number;
  readonly circumradius: number;
}

const PLATONIC_SOURCE =
  "CRC Standard Mathematical Tables formulas as listed on geocities.ws/qxb4tech/polyhedron.html; liquisearch, Platonic solid - radii, area, volume";

/** Edge 1. `inradius`: distance of the faces. */
export const PLATONIC = {
  tetrahedron: {
    source: PLATONIC_SOURCE,
    status: "read",
    faces: 4,
    edges: 6,
    vertices: 4,
    volume: 0.11785113,
    area: 1.732050808,
    circumradius: 0.612372436,
    inradius: 0.204124145,
    dihedralDeg: 70.528779,
  },
  cube: {
    source: PLATONIC_SOURCE,
    status: "read",
    faces: 6,
    edges: 12,
    vertices: 8,
    volume: 1,
    area: 6,
    circumradius: 0.866025404,
    inradius: 0.5,
    dihedralDeg: 90,
  },
  octahedron: {
    source: PLATONIC_SOURCE,
    status: "read",
    faces: 8,
    edges: 12,
    vertices: 6,
    volume: 0.471404521,
    area: 3.464101615,
    circumradius: Math.SQRT1_2,
    inradius: 0.40824829,
    dihedralDeg: 109.471221,
  },
  dodecahedron: {
    source: PLATONIC_SOURCE,
    status: "read",
    faces: 12,
    edges: 30,
    vertices: 20,
    volume: 7.663118961,
    area: 20.645728807,
    circumradius: 1.401258538,
    inradius: 1.113516364,
    dihedralDeg: 116.565051,
  },
  icosahedron: {
    source: PLATONIC_SOURCE,
    status: "memory",
    faces: 20,
    edges: 30,
    vertices: 12,
    volume: 2.181694991,
    area: 8.660254038,
    circumradius: 0.951056516,
    inradius: 0.755761314,
    dihedralDeg: 138.189685,
  },
} as const satisfies Record<string, PublishedSolid & { inradius: number; dihedralDeg: number }>;

/** Circumradius 1. Source: MathAss help pages "The Dodecahedron" and "The Icosahedron" (matheass.eu), example 1, read. */
export const MATHASS = {
  dodecahedron: { edge: 0.71364418, inradius: 0.79465447, volume: 2.7851639, area: 10.514622 },
  icosahedron: { edge: 1.0514622, inradius: 0.79465447, volume: 2.5361507, area: 9.5745414 },
} as const;

/** Distance of the faces over the radius at which their circles first touch: cos of half the angle between neighbouring normals. Computed. */
export const TOUCHING = {
  tetrahedron: 0.57735027,
  cube: Math.SQRT1_2,
  octahedron: 0.81649658,
  dodecahedron: 0.85065081,
  icosahedron: 0.93417236,
  rhombicDodecahedron: 0.8660254,
  rhombicTriacontahedron: 0.95105652,
} as const;

/** All faces at distance 1: volume, area and the distances of the vertices. Computed by half-space intersection (qhull). */
export const CATALAN = {
  rhombicDodecahedron: {
    faces: 12,
    edges: 24,
    vertices: 14,
    volume: 5.65685425,
    area: 16.97056275,
    vertexDistances: [1.22474487, Math.SQRT2],
  },
  rhombicTriacontahedron: {
    faces: 30,
    edges: 60,
    vertices: 32,
    volume: 4.72135955,
    area: 14.16407865,
    vertexDistances: [1.07046627, 1.1755705],
  },
} as const;

/** Edge 1; distances of the faces by their direction. */
export const ARCHIMEDEAN = {
  truncatedIcosahedron: {
    source:
      "everything.explained.today and wikiwand copies of Wikipedia, Truncated icosahedron; closed forms V = (125 + 43 sqrt 5)/4, R = sqrt(58 + 18 sqrt 5)/4",
    status: "read",
    faces: 32,
    edges: 90,
    vertices: 60,
    volume: 55.287730758,
    area: 72.607,
    circumradius: 2.478018659,
    distances: { hexagon: 2.267283942, pentagon: 2.327438437 },
  },
  cuboctahedron: {
    source: "tranpedia, Cube octahedron; wikimili, Cuboctahedron",
    status: "read",
    faces: 14,
    edges: 24,
    vertices: 12,
    volume: 2.357022604,
    area: 9.464101615,
    circumradius: 1,
    // circumradius 1 and the circumradii of square and triangle, 1/sqrt 2 and 1/sqrt 3
    distances: { square: Math.sqrt(1 / 2), triangle: Math.sqrt(2 / 3) },
  },
  truncatedOctahedron: {
    source: "closed forms V = 8 sqrt 2, A = 6 + 12 sqrt 3, R = sqrt(10)/2",
    status: "memory",
    faces: 14,
    edges: 36,
    vertices: 24,
    volume: 11.313708499,
    area: 26.784609691,
    circumradius: 1.58113883,
    distances: { square: Math.SQRT2, hexagon: Math.sqrt(3 / 2) },
  },
  truncatedCuboctahedron: {
    source: "cavac.at and wikimili copies of Wikipedia, Truncated cuboctahedron",
    status: "read",
    faces: 26,
    edges: 72,
    vertices: 48,
    volume: 41.7989899,
    area: 61.7551724,
    // vertices are the permutations of (1, 1 + sqrt 2, 1 + 2 sqrt 2) / 2 with all signs
    circumradius: Math.sqrt(13 + 6 * Math.SQRT2) / 2,
    distances: {
      octagon: (1 + 2 * Math.SQRT2) / 2,
      square: (2 + 3 * Math.SQRT2) / (2 * Math.SQRT2),
      hexagon: (3 + 3 * Math.SQRT2) / (2 * Math.sqrt(3)),
    },
  },
} as const satisfies Record<string, PublishedSolid & { distances: Record<string, number> }>;

/** Edge 1. Source: Weisstein, CRC Concise Encyclopedia of Mathematics (archive.lib.msu.edu/crcmath), truncated dodecahedron, read. */
export const TRUNCATED_DODECAHEDRON = { midradius: 2.92705, circumradius: 2.96945 } as const;

/** Radius 1, by height of the cap: its volume and curved area. Computed from pi h^2 (3 R - h)/3 and 2 pi R h (MathWorld, Spherical cap). */
export const CAPS = [
  { height: 0.1, volume: 0.030368729, area: 0.628318531 },
  { height: 0.2, volume: 0.117286126, area: 1.256637061 },
  { height: 0.25, volume: 0.179987079, area: 1.570796327 },
  { height: 0.5, volume: 0.654498469, area: Math.PI },
] as const;

/** What the six planes |x|, |y|, |z| = a leave of the unit ball. Computed: six caps while they do not overlap, exact sections below. */
export const BALL_CUT_BY_CUBE = [
  { a: 0.9, volume: 4.006577831 },
  { a: 0.8, volume: 3.48507345 },
  { a: 0.75, volume: 3.10886773 },
  { a: Math.SQRT1_2, volume: 2.729626936 },
  { a: 0.6, volume: 1.727568765 },
  { a: 1 / Math.sqrt(3), volume: 1.539600718 },
] as const;

/** Two tiers of n at distance 1 with normals `alpha` from the axis: mirrored (bipyramid) and turned by half a step (trapezohedron). Computed. */
export const TWO_TIERS = [
  { n: 6, alphaDeg: 45, bipyramid: 6.531972647, trapezohedron: 6.498301791 },
  { n: 8, alphaDeg: 50, bipyramid: 5.856627639, trapezohedron: 5.847459214 },
  { n: 16, alphaDeg: 43, bipyramid: 6.23729644, trapezohedron: 6.236709506 },
] as const;
