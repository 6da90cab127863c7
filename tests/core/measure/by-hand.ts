/**
 * The measures of a look a second time, as one would write them down without a thought for speed: every surface asked at every
 * step, Snell by its tangential part, lamps as twelve vectors and angles in degrees, patches by union and find.
 * Shares nothing with the engine; balls are the only designs it knows.
 */
type Point = readonly [number, number, number];
export interface HandBody {
  readonly planes: readonly { readonly n: Point; readonly h: number }[];
  readonly nd: number;
  /** Balls inside, unit sphere. */
  readonly balls: readonly { readonly at: Point; readonly r: number }[];
}
type Fate = { readonly kind: "back" | "through" | "inside" | "neither"; readonly at: Point } | null;

const N = 96;
const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const mix = (a: Point, s: number, b: Point): Point => [a[0] + s * b[0], a[1] + s * b[1], a[2] + s * b[2]];
const unit = (a: Point): Point => mix([0, 0, 0], 1 / Math.hypot(...a), a);
const ORIGIN: Point = [0, 0, 0];

/** Both distances to a sphere, or none. */
function sphere(o: Point, d: Point, at: Point, r: number): readonly [number, number] | null {
  const q = mix(o, -1, at);
  const b = dot(q, d);
  const room = b * b - dot(q, q) + r * r;
  return room <= 0 ? null : [-b - Math.sqrt(room), -b + Math.sqrt(room)];
}

/** The part of a ray's line within the body, with the normals at both ends; null for a miss. */
function within(body: HandBody, o: Point, d: Point) {
  const ball = sphere(o, d, ORIGIN, 1);
  if (!ball) return null;
  let [from, to] = ball;
  let [first, last]: (Point | null)[] = [null, null];
  for (const { n, h } of body.planes) {
    const slope = dot(n, d);
    const t = (h - dot(n, o)) / slope;
    if (slope < 0 && t > from) {
      from = t;
      first = n;
    }
    if (slope > 0 && t < to) {
      to = t;
      last = n;
    }
    if (slope === 0 && dot(n, o) > h) return null;
  }
  if (from >= to) return null;
  return { from, fromN: first ?? unit(mix(o, from, d)), to, toN: last ?? unit(mix(o, to, d)) };
}

/** Direction across a boundary from index n1 to n2, null where reflection is total. */
function bent(d: Point, normal: Point, n1: number, n2: number): Point | null {
  const along = mix(d, -dot(d, normal), normal);
  const sine: Point = mix(ORIGIN, n1 / n2, along);
  const rest = 1 - dot(sine, sine);
  return rest <= 0 ? null : mix(sine, Math.sign(dot(d, normal)) * Math.sqrt(rest), normal);
}

function fateOf(body: HandBody, o: Point, towards: Point): Fate {
  const first = within(body, o, towards);
  if (!first) return null;
  let p = mix(o, first.from, towards);
  let d = bent(towards, first.fromN, 1, body.nd) as Point;
  for (let reflections = 0; reflections < 40; reflections++) {
    const ahead = within(body, mix(p, 1e-9, d), d);
    const reach = ahead ? ahead.to : 0;
    const met = body.balls.flatMap(({ at, r }) => {
      const t = sphere(p, d, at, r);
      return t && t[1] > 0 && t[0] < reach ? [Math.max(0, t[0])] : [];
    });
    if (met.length > 0) return { kind: "inside", at: mix(p, Math.min(...met), d) };
    const n = ahead ? ahead.toN : unit(p);
    p = mix(p, reach + 1e-9, d);
    const out = bent(d, n, body.nd, 1);
    if (out) return { kind: dot(out, towards) < 0 ? "back" : "through", at: out };
    d = mix(d, -2 * dot(d, n), n);
  }
  return { kind: "neither", at: d };
}

const G = (1 + Math.sqrt(5)) / 2;
const LAMPS: readonly Point[] = [-1, 1].flatMap((s) =>
  [-G, G].flatMap((p): Point[] => [unit([0, s, p]), unit([s, p, 0]), unit([p, 0, s])]),
);

interface Look {
  readonly fates: readonly Fate[];
  readonly seen: number;
  readonly lit: readonly boolean[];
}

function lookAt(body: HandBody, leanDeg: number): Look {
  const t = (leanDeg * Math.PI) / 180;
  const view: Point = [0, Math.sin(t), Math.cos(t)];
  const up: Point = [0, Math.cos(t), -Math.sin(t)];
  const fates = Array.from({ length: N * N }, (_, k) => {
    const [x, y] = [(2 * (k % N) + 1) / N - 1, (2 * Math.floor(k / N) + 1) / N - 1];
    return fateOf(body, mix(mix([x, 0, 0], y, up), 3, view), mix(ORIGIN, -1, view));
  });
  const isLit = (fate: Fate): boolean => {
    if (fate === null || fate.kind === "inside" || fate.kind === "neither") return false;
    const e: Point = [fate.at[0], dot(fate.at, up), dot(fate.at, view)];
    return LAMPS.some((lamp) => (Math.acos(Math.min(1, dot(lamp, e))) * 180) / Math.PI <= 8);
  };
  return { fates, seen: Math.max(1, fates.filter((f) => f !== null).length), lit: fates.map(isLit) };
}

function imagesOf(fates: readonly Fate[]): number {
  const group = fates.map((_, i) => i);
  const root = (i: number): number => (group[i] === i ? i : root(group[i]));
  const isIn = (i: number): boolean => fates[i]?.kind === "inside";
  const join = (a: number, b: number): void => {
    const [p, q] = [fates[a], fates[b]];
    if (!isIn(a) || !isIn(b) || !p || !q || Math.hypot(...mix(p.at, -1, q.at)) > 0.25) return;
    group[root(a)] = root(b);
  };
  for (let k = 0; k < N * N; k++) {
    if (k % N < N - 1) join(k, k + 1);
    if (k < N * (N - 1)) join(k, k + N);
  }
  const sizes = new Map<number, number>();
  fates.forEach((_, i) => {
    if (isIn(i)) sizes.set(root(i), (sizes.get(root(i)) ?? 0) + 1);
  });
  return [...sizes.values()].filter((size) => size >= 4).length;
}

export function measuredByHand(body: HandBody) {
  const leans = Array.from({ length: 41 }, (_, k) => lookAt(body, k - 20));
  const nine = leans.filter((_, k) => k % 5 === 0);
  const share = (kind: string): number =>
    nine.reduce((sum, l) => sum + l.fates.filter((f) => f?.kind === kind).length / l.seen, 0) / nine.length;
  const turned = leans
    .slice(0, 40)
    .map((l, k) => l.lit.filter((on, i) => on !== leans[k + 1].lit[i]).length / l.seen);
  return {
    back: share("back"),
    through: share("through"),
    inside: share("inside"),
    sparkle: (100 * turned.reduce((a, b) => a + b, 0)) / 40,
    images: imagesOf(leans[20].fates),
  };
}
