/**
 * Straight rays of one viewer as `straight-rays.ts` follows them, by the same operations on the same doubles in the same order, so
 * that both come to the same bits; but a whole part of the grid side by side, one step of the way at a time, with two rays or two planes
 * in one instruction. Rays of one part are never in line with one another within the reach
 * of `near` (`places.ts`), so that none tells anything of another of its part.
 *
 * AssemblyScript: the compiler is asc, not tsc (`npm run kernel`). Nothing is allocated; the host writes tables into memory at
 * the addresses exported here, and tells where it keeps places and marks.
 */

// surfaces, fates and bounds of `straight-rays.ts`
const SKIN: i32 = -1;
const MISSED: u8 = 0;
const BACK: i64 = 1;
const THROUGH: i64 = 2;
const INSIDE: i64 = 3;
const NEITHER: u8 = 4;
const MOST_REFLECTIONS: i32 = 40;
/** Path of a ray that met skin or too many planes. */
const MIXED: f64 = -1;
const MOST_PATH: f64 = 9007199254740991;
const CLEAR: f64 = 1e-9;
/** Fields of `caps.ts`: along a side, and on one half of the ball. */
const FIELDS: i32 = 24;
const HALF: i32 = FIELDS * FIELDS;

/** Rays of one part at the most; a column is a little longer, for what is beside the last. */
export const LONGEST_PART: i32 = 318;
const COLUMN: usize = 8 * 320;
/** What is known of each ray under way: place, direction, cosine of the incidence, length of this stretch, path so far, nearest the ball inside. */
const X: usize = 1024;
const Y: usize = X + COLUMN;
const Z: usize = Y + COLUMN;
const DX: usize = Z + COLUMN;
const DY: usize = DX + COLUMN;
const DZ: usize = DY + COLUMN;
const COSINE: usize = DZ + COLUMN;
const LENGTH: usize = COSINE + COLUMN;
const PATH: usize = LENGTH + COLUMN;
const NEAREST: usize = PATH + COLUMN;
/** Surfaces where the stretch begins and where it ends. */
const FROM: usize = NEAREST + COLUMN;
const TO: usize = FROM + COLUMN;
/** What is told of a ray that ends with this stretch; its fate is 0 if it does not. */
const END_FATE: usize = TO + COLUMN;
const END_LIT: usize = END_FATE + COLUMN;
const END_PATH: usize = END_LIT + COLUMN;
const END_CLEARANCE: usize = END_PATH + COLUMN;
/** Number of each in its order, and the field it looks up: four bytes each. */
const RAY: usize = END_CLEARANCE + COLUMN;
const FIELD: usize = RAY + COLUMN / 2;
/** A field that no ray of a part has. */
const SPARE: i32 = 320;

/** Planes at the most; one more stands for none and cuts nothing away. */
export const MOST_PLANES: i32 = 255;
/** Tables of the body that the host fills. The viewer's right, up and view. */
export const FRAME: usize = 65536;
/** Four numbers a plane: normal and distance; n.right, n.up, n.d and one unused; direction of what goes in and one unused. */
export const PLANES: usize = FRAME + 128;
export const COMING: usize = PLANES + 32 * 256;
export const ENTERED: usize = COMING + 32 * 256;
export const SPREAD: usize = ENTERED + 32 * 256;
/** For each field where its pairs of planes begin, as addresses, and where the last ends; planes ascend, an odd one has none beside it. */
export const FIRST: usize = SPREAD + 8 * 256;
export const PAIRS: usize = FIRST + 8 * (HALF + 8);
/** From here on memory is the host's. */
export const FREE: usize = PAIRS + 8 * 128 * 2 * HALF;

let planeCount: i32 = 0;
let nd: f64 = 0;
/** Centre and radius squared of the ball inside; none where that is negative. */
let ballX: f64 = 0;
let ballY: f64 = 0;
let ballZ: f64 = 0;
let ball2: f64 = 0;
let golden: f64 = 0;
let litCosine: f64 = 0;
/** Addresses of `Places`. */
let placeAt: usize = 0;
let near: usize = 0;
let apart: usize = 0;
/** Addresses of `RayMarks`. */
let fates: usize = 0;
let lit: usize = 0;
let entries: usize = 0;
let paths: usize = 0;
let clearances: usize = 0;
let counts: usize = 0;

export function setLamps(ratio: f64, cosine: f64): void {
  golden = ratio;
  litCosine = cosine;
}

export function setBody(planes: i32, index: f64, x: f64, y: f64, z: f64, radius2: f64): void {
  planeCount = planes;
  nd = index;
  ballX = x;
  ballY = y;
  ballZ = z;
  ball2 = radius2;
}

export function setPlaces(at: usize, nearBy: usize, howFar: usize): void {
  placeAt = at;
  near = nearBy;
  apart = howFar;
}

export function setMarks(
  fate: usize,
  isLit: usize,
  entry: usize,
  path: usize,
  clearance: usize,
  count: usize,
): void {
  fates = fate;
  lit = isLit;
  entries = entry;
  paths = path;
  clearances = clearance;
  counts = count;
}

// two doubles at a time
function two(a: f64): v128 {
  return f64x2.splat(a);
}
function mul(a: v128, b: v128): v128 {
  return f64x2.mul(a, b);
}
function add(a: v128, b: v128): v128 {
  return f64x2.add(a, b);
}
function sub(a: v128, b: v128): v128 {
  return f64x2.sub(a, b);
}
function both(a: v128, b: v128): v128 {
  return v128.and(a, b);
}
function dot(ax: v128, ay: v128, az: v128, bx: v128, by: v128, bz: v128): v128 {
  return add(add(mul(ax, bx), mul(ay, by)), mul(az, bz));
}
/** 0 in place of what is less. */
function least0(a: v128): v128 {
  return f64x2.pmax(two(0), a);
}
function pick(mask: v128, yes: v128, no: v128): v128 {
  return v128.bitselect(yes, no, mask);
}
/** The first, or the second, of two and of two more. */
function firsts(a: v128, b: v128): v128 {
  return v128.shuffle<f64>(a, b, 0, 2);
}
function seconds(a: v128, b: v128): v128 {
  return v128.shuffle<f64>(a, b, 1, 3);
}

// entry k of a column, entries k and k + 1, and entry k twice
function one(column: usize, k: i32): f64 {
  return load<f64>(column + (k << 3));
}
function put(column: usize, k: i32, value: f64): void {
  store<f64>(column + (k << 3), value);
}
function pair(column: usize, k: i32): v128 {
  return v128.load(column + (k << 3));
}
function putPair(column: usize, k: i32, value: v128): void {
  v128.store(column + (k << 3), value);
}
function twice(column: usize, k: i32): v128 {
  return v128.load_splat<f64>(column + (k << 3));
}
function putFirst(column: usize, k: i32, value: v128): void {
  v128.store64_lane(column + (k << 3), value, 0);
}
function rayOf(k: i32): i32 {
  return load<i32>(RAY + (k << 2));
}
function putRay(k: i32, r: i32): void {
  store<i32>(RAY + (k << 2), r);
}
function frame(k: i32): f64 {
  return load<f64>(FRAME + (k << 3));
}
function addTo(fate: i32, count: i32): void {
  const at = counts + (fate << 2);
  store<u32>(at, load<u32>(at) + count);
}

/** The column or row of a field along one axis of the folded octahedron. */
function fieldAlong(a: v128, scale: v128): v128 {
  const at = add(mul(a, scale), two(FIELDS / 2));
  return i32x4.min_s(i32x4.trunc_sat_f64x2_s_zero(at), i32x4.splat(FIELDS - 1));
}

/** Notes the fields of two directions (`fieldAt`). */
function putFields(k: i32, x: v128, y: v128, z: v128): void {
  const scale = f64x2.div(two(FIELDS / 2), add(add(f64x2.abs(x), f64x2.abs(y)), f64x2.abs(z)));
  const isBehind = f64x2.lt(z, two(0));
  const half = both(v128.shuffle<i32>(isBehind, isBehind, 0, 2, 0, 2), i32x4.splat(HALF));
  const row = i32x4.mul(fieldAlong(y, scale), i32x4.splat(FIELDS));
  v128.store64_lane(FIELD + (k << 2), i32x4.add(i32x4.add(half, row), fieldAlong(x, scale)), 0);
}

/** Gives a ray what two on a line with it have, where it must have it too. */
function isKnown(r: i32): bool {
  for (let n = 4 * r, last = n + 4; n < last; n += 2) {
    const a = <i32>load<i16>(near + (n << 1));
    const b = <i32>load<i16>(near + (n << 1), 2);
    const path = one(paths, a);
    if (path < 0 || path !== one(paths, b)) continue;
    let left: f64 = 1;
    const entry = load<i16>(entries + (a << 1));
    if (ball2 >= 0) {
      const spread = one(SPREAD, entry);
      const fromA = one(clearances, a) - one(apart, n) * spread;
      const fromB = one(clearances, b) - one(apart, n + 1) * spread;
      left = max<f64>(fromA, fromB) - CLEAR;
      if (left <= 0) continue;
    }
    put(paths, r, path);
    put(clearances, r, left);
    store<i16>(entries + (r << 1), entry);
    const fate = load<u8>(fates + a);
    store<u8>(fates + r, fate);
    store<u8>(lit + r, load<u8>(lit + a));
    addTo(fate, 1);
    return true;
  }
  return false;
}

/** Where rays come to the ball. What is beside the last of an odd number is the first once more, and not used. */
function comeToBall(count: i32): void {
  putRay(count, rayOf(0));
  for (let k = 0; k < count; k += 2) {
    const a = placeAt + 24 * rayOf(k);
    const b = placeAt + 24 * rayOf(k + 1);
    const x = firsts(v128.load(a), v128.load(b));
    const y = seconds(v128.load(a), v128.load(b));
    const root = firsts(v128.load_splat<f64>(a, 16), v128.load_splat<f64>(b, 16));
    const px = add(add(mul(x, two(frame(0))), mul(y, two(frame(3)))), mul(root, two(frame(6))));
    const py = add(add(mul(x, two(frame(1))), mul(y, two(frame(4)))), mul(root, two(frame(7))));
    const pz = add(add(mul(x, two(frame(2))), mul(y, two(frame(5)))), mul(root, two(frame(8))));
    putPair(X, k, px);
    putPair(Y, k, py);
    putPair(Z, k, pz);
    putFields(k, px, py, pz);
  }
}

/** Whether a ray that would come in so far along its way is out again by then, by one of the planes that cut away the ball's far place. */
function isOutBefore(enter: f64, x: f64, y: f64, root: f64): bool {
  if (enter >= root) return true;
  const fx = two(x * frame(0) + y * frame(3) - root * frame(6));
  const fy = two(x * frame(1) + y * frame(4) - root * frame(7));
  const fz = two(x * frame(2) + y * frame(5) - root * frame(8));
  putFields(SPARE, fx, fy, fz);
  const field = FIRST + (load<i32>(FIELD + (SPARE << 2)) << 2);
  for (let at: usize = load<u32>(field), end: usize = load<u32>(field, 4); at < end; at += 4) {
    const i = load<i32>(at);
    const coming = COMING + (i << 5);
    const facing = load<f64>(coming, 16);
    const above = load<f64>(PLANES + (i << 5), 24) - x * load<f64>(coming) - y * load<f64>(coming, 8);
    if (facing > 0 ? above <= enter * facing : above < 0 && facing === 0) return true;
  }
  return false;
}

/** How far along its way the last search let a ray come in. */
let entered: f64 = 0;

/** The surface by which ray k comes in: the last of the planes that cut its place on the ball away; less than SKIN if it runs away from one. */
function entryOf(k: i32, x: f64, y: f64, root: f64): i32 {
  entered = -root;
  const field = FIRST + (load<i32>(FIELD + (k << 2)) << 2);
  let at: usize = load<u32>(field);
  const end: usize = load<u32>(field, 4);
  if (at === end) return SKIN;
  const px = twice(X, k);
  const py = twice(Y, k);
  const pz = twice(Z, k);
  let latest = two(-root);
  let surface = two(SKIN);
  let isAway = two(0);
  do {
    const a = load<i32>(at) << 5;
    const b = load<i32>(at, 4) << 5;
    const nxy = v128.load(PLANES + a);
    const mxy = v128.load(PLANES + b);
    const nzh = v128.load(PLANES + a, 16);
    const mzh = v128.load(PLANES + b, 16);
    const h = seconds(nzh, mzh);
    const cut = f64x2.gt(dot(firsts(nxy, mxy), seconds(nxy, mxy), firsts(nzh, mzh), px, py, pz), h);
    const across = v128.load(COMING + a);
    const across2 = v128.load(COMING + b);
    const facing = firsts(v128.load(COMING + a, 16), v128.load(COMING + b, 16));
    isAway = v128.or(isAway, both(cut, f64x2.ge(facing, two(0))));
    const above = sub(sub(h, mul(two(x), firsts(across, across2))), mul(two(y), seconds(across, across2)));
    const t = f64x2.div(above, facing);
    const isLater = both(cut, f64x2.gt(t, latest));
    latest = pick(isLater, t, latest);
    surface = pick(isLater, f64x2.convert_low_i32x4_s(v128.load_zero<u64>(at)), surface);
    at += 8;
  } while (at < end);
  if (v128.any_true(isAway)) return SKIN - 1;
  // of the two lanes the later one, of those alike the plane that is listed first
  const t0 = f64x2.extract_lane(latest, 0);
  const t1 = f64x2.extract_lane(latest, 1);
  const i0 = f64x2.extract_lane(surface, 0);
  const i1 = f64x2.extract_lane(surface, 1);
  const isSecond = t1 > t0 || (t1 === t0 && i1 < i0);
  entered = isSecond ? t1 : t0;
  return <i32>(isSecond ? i1 : i0);
}

/** Whether the places beside ray r on both sides met the piece: it is convex, so that this one does too. */
function isSure(r: i32): bool {
  const a = load<i16>(near + (r << 3));
  const b = load<i16>(near + (r << 3), 2);
  return load<u8>(fates + a) !== MISSED && load<u8>(fates + b) !== MISSED;
}

/** Lets rays in. What is left in the columns are those that meet the piece, just within the surface. @returns how many */
function letIn(count: i32): i32 {
  const eta = 1 / nd;
  let met = 0;
  for (let k = 0; k < count; k++) {
    const r = rayOf(k);
    const place = placeAt + 24 * r;
    const x = load<f64>(place);
    const y = load<f64>(place, 8);
    const root = load<f64>(place, 16);
    const surface = entryOf(k, x, y, root);
    if (surface < SKIN || (surface > SKIN && !isSure(r) && isOutBefore(entered, x, y, root))) {
      store<u8>(fates + r, MISSED);
      store<u8>(lit + r, 0);
      put(paths, r, MIXED);
      continue;
    }
    let px = one(X, k);
    let py = one(Y, k);
    let pz = one(Z, k);
    let dx: f64;
    let dy: f64;
    let dz: f64;
    if (surface === SKIN) {
      const along = eta * root - sqrt(max<f64>(0, 1 - eta * eta * (1 - root * root)));
      dx = along * px - eta * frame(6);
      dy = along * py - eta * frame(7);
      dz = along * pz - eta * frame(8);
    } else {
      px = x * frame(0) + y * frame(3) - entered * frame(6);
      py = x * frame(1) + y * frame(4) - entered * frame(7);
      pz = x * frame(2) + y * frame(5) - entered * frame(8);
      const direction = ENTERED + (surface << 5);
      dx = load<f64>(direction);
      dy = load<f64>(direction, 8);
      dz = load<f64>(direction, 16);
    }
    putRay(met, r);
    put(X, met, px);
    put(Y, met, py);
    put(Z, met, pz);
    put(DX, met, dx);
    put(DY, met, dy);
    put(DZ, met, dz);
    put(FROM, met, surface);
    put(COSINE, met, -(px * dx + py * dy + pz * dz));
    put(PATH, met, surface === SKIN ? MIXED : surface + 1);
    put(NEAREST, met, f64.MAX_VALUE);
    store<i16>(entries + (r << 1), <i16>surface);
    met++;
  }
  addTo(MISSED, count - met);
  return met;
}

/** How far it is to the ball, and which field lies there; from the ball to itself the chord is exactly 2 cos. */
function lookAhead(count: i32): void {
  for (let k = 0; k < count; k += 2) {
    const px = pair(X, k);
    const py = pair(Y, k);
    const pz = pair(Z, k);
    const dx = pair(DX, k);
    const dy = pair(DY, k);
    const dz = pair(DZ, k);
    const b = dot(px, py, pz, dx, dy, dz);
    const room = sub(sub(sub(add(mul(b, b), two(1)), mul(px, px)), mul(py, py)), mul(pz, pz));
    const cosine = pair(COSINE, k);
    const far = sub(f64x2.sqrt(least0(room)), b);
    const t = least0(pick(f64x2.eq(pair(FROM, k), two(SKIN)), add(cosine, cosine), far));
    putPair(LENGTH, k, t);
    putFields(k, add(px, mul(t, dx)), add(py, mul(t, dy)), add(pz, mul(t, dz)));
  }
}

/** Where stretches end: at the nearest of the planes that cut away the place on the ball ahead, or there. Two planes are asked at a time. */
function findEnds(count: i32): void {
  for (let k = 0; k < count; k++) {
    const field = FIRST + (load<i32>(FIELD + (k << 2)) << 2);
    let at: usize = load<u32>(field);
    const end: usize = load<u32>(field, 4);
    let surface = two(SKIN);
    if (at === end) {
      putFirst(TO, k, surface);
      continue;
    }
    const px = twice(X, k);
    const py = twice(Y, k);
    const pz = twice(Z, k);
    const dx = twice(DX, k);
    const dy = twice(DY, k);
    const dz = twice(DZ, k);
    const from = twice(FROM, k);
    let t = twice(LENGTH, k);
    let cosine = twice(COSINE, k);
    const ex = add(px, mul(t, dx));
    const ey = add(py, mul(t, dy));
    const ez = add(pz, mul(t, dz));
    do {
      const a = PLANES + (load<i32>(at) << 5);
      const b = PLANES + (load<i32>(at, 4) << 5);
      const i = f64x2.convert_low_i32x4_s(v128.load_zero<u64>(at));
      const nx = firsts(v128.load(a), v128.load(b));
      const ny = seconds(v128.load(a), v128.load(b));
      const nz = firsts(v128.load(a, 16), v128.load(b, 16));
      const h = seconds(v128.load(a, 16), v128.load(b, 16));
      const facing = dot(nx, ny, nz, dx, dy, dz);
      const above = sub(sub(sub(h, mul(nx, px)), mul(ny, py)), mul(nz, pz));
      const isAhead = both(f64x2.gt(facing, two(0)), f64x2.ne(i, from));
      const may = both(isAhead, f64x2.gt(dot(nx, ny, nz, ex, ey, ez), h));
      const reached = f64x2.div(least0(above), facing);
      // the first of them, then the second if it is nearer
      const first = both(may, f64x2.lt(above, mul(t, facing)));
      const isFirst = firsts(first, first);
      t = pick(isFirst, firsts(reached, reached), t);
      const second = both(may, f64x2.lt(above, mul(t, facing)));
      const isSecond = seconds(second, second);
      t = pick(isSecond, seconds(reached, reached), t);
      surface = pick(isSecond, seconds(i, i), pick(isFirst, firsts(i, i), surface));
      cosine = pick(isSecond, seconds(facing, facing), pick(isFirst, firsts(facing, facing), cosine));
      at += 8;
    } while (at < end);
    putFirst(LENGTH, k, t);
    putFirst(TO, k, surface);
    putFirst(COSINE, k, cosine);
  }
}

/** Goes the stretch: notes what becomes of rays that meet the ball inside or leave, and mirrors the others. */
function step(count: i32): void {
  const base = two(planeCount + 1);
  const mostPath = two(MOST_PATH / (planeCount + 1) - 1);
  const index = two(nd);
  const index2 = two(nd * nd);
  const radius = two(sqrt(max<f64>(0, ball2)));
  const gold = two(golden);
  for (let k = 0; k < count; k += 2) {
    let px = pair(X, k);
    let py = pair(Y, k);
    let pz = pair(Z, k);
    const dx = pair(DX, k);
    const dy = pair(DY, k);
    const dz = pair(DZ, k);
    const t = pair(LENGTH, k);
    const to = pair(TO, k);
    const path = pair(PATH, k);
    const isSkin = f64x2.eq(to, two(SKIN));

    // the ball inside
    let nearest = pair(NEAREST, k);
    let isInside = two(0);
    if (ball2 >= 0) {
      const qx = sub(px, two(ballX));
      const qy = sub(py, two(ballY));
      const qz = sub(pz, two(ballZ));
      const along = dot(qx, qy, qz, dx, dy, dz);
      const passed = sub(dot(qx, qy, qz, qx, qy, qz), mul(along, along));
      const room = sub(two(ball2), passed);
      const root = f64x2.sqrt(least0(room));
      const isAhead = both(f64x2.gt(room, two(0)), f64x2.gt(root, along));
      isInside = both(isAhead, f64x2.lt(sub(f64x2.neg(along), root), t));
      nearest = pick(isInside, nearest, f64x2.pmin(nearest, passed));
      putPair(NEAREST, k, nearest);
    }
    putPair(END_CLEARANCE, k, sub(f64x2.sqrt(nearest), radius));

    // no plane has the number 0 in a path
    const isLong = v128.or(f64x2.ge(path, mostPath), f64x2.lt(path, two(0)));
    const within = pick(isLong, two(MIXED), mul(path, base));
    const next = pick(v128.or(isLong, isSkin), two(MIXED), add(add(mul(path, base), to), two(1)));
    putPair(PATH, k, next);
    putPair(END_PATH, k, pick(isInside, within, next));

    // to the plane, and back onto it, or to the ball: 1 / |p| there by one step of Newton's
    px = add(px, mul(t, dx));
    py = add(py, mul(t, dy));
    pz = add(pz, mul(t, dz));
    const a = PLANES + ((<i32>f64x2.extract_lane(to, 0)) << 5);
    const b = PLANES + ((<i32>f64x2.extract_lane(to, 1)) << 5);
    let nx = firsts(v128.load(a), v128.load(b));
    let ny = seconds(v128.load(a), v128.load(b));
    let nz = firsts(v128.load(a, 16), v128.load(b, 16));
    const h = seconds(v128.load(a, 16), v128.load(b, 16));
    const off = sub(sub(sub(h, mul(nx, px)), mul(ny, py)), mul(nz, pz));
    const size = sub(two(1.5), mul(two(0.5), dot(px, py, pz, px, py, pz)));
    const sx = mul(px, size);
    const sy = mul(py, size);
    const sz = mul(pz, size);
    putPair(X, k, pick(isSkin, sx, add(px, mul(off, nx))));
    putPair(Y, k, pick(isSkin, sy, add(py, mul(off, ny))));
    putPair(Z, k, pick(isSkin, sz, add(pz, mul(off, nz))));
    nx = pick(isSkin, sx, nx);
    ny = pick(isSkin, sy, ny);
    nz = pick(isSkin, sz, nz);
    // a chord meets the ball at both ends alike
    const isNew = v128.andnot(isSkin, f64x2.eq(pair(FROM, k), two(SKIN)));
    const cosine = pick(isNew, least0(dot(nx, ny, nz, dx, dy, dz)), pair(COSINE, k));
    putPair(COSINE, k, cosine);

    // out where reflection is not total
    const cos2Out = sub(two(1), mul(index2, sub(two(1), mul(cosine, cosine))));
    const isOut = f64x2.gt(cos2Out, two(0));
    const turn = sub(f64x2.sqrt(least0(cos2Out)), mul(index, cosine));
    const ox = add(mul(index, dx), mul(turn, nx));
    const oy = add(mul(index, dy), mul(turn, ny));
    const oz = add(mul(index, dz), mul(turn, nz));
    const right = f64x2.abs(dot(ox, oy, oz, two(frame(0)), two(frame(1)), two(frame(2))));
    const up = f64x2.abs(dot(ox, oy, oz, two(frame(3)), two(frame(4)), two(frame(5))));
    const towards = dot(ox, oy, oz, two(frame(6)), two(frame(7)), two(frame(8)));
    const view = f64x2.abs(towards);
    const lamp = f64x2.pmax(
      f64x2.pmax(add(up, mul(gold, view)), add(right, mul(gold, up))),
      add(view, mul(gold, right)),
    );
    const isLit = v128.andnot(both(isOut, f64x2.ge(lamp, two(litCosine))), isInside);
    const side = pick(f64x2.gt(towards, two(0)), i64x2.splat(BACK), i64x2.splat(THROUGH));
    putPair(END_FATE, k, pick(isInside, i64x2.splat(INSIDE), both(isOut, side)));
    putPair(END_LIT, k, both(isLit, i64x2.splat(1)));

    // mirrored
    const back = add(cosine, cosine);
    putPair(DX, k, sub(dx, mul(back, nx)));
    putPair(DY, k, sub(dy, mul(back, ny)));
    putPair(DZ, k, sub(dz, mul(back, nz)));
  }
}

function move(column: usize, k: i32, to: i32): void {
  put(column, to, one(column, k));
}

/** Writes down the rays that have ended and closes the ranks of the others. @returns how many are left */
function closeRanks(count: i32): i32 {
  let left = 0;
  for (let k = 0; k < count; k++) {
    const r = rayOf(k);
    const fate = load<i32>(END_FATE + (k << 3));
    if (fate !== 0) {
      store<u8>(fates + r, fate);
      store<u8>(lit + r, load<u8>(END_LIT + (k << 3)));
      put(paths, r, one(END_PATH, k));
      put(clearances, r, one(END_CLEARANCE, k));
      addTo(fate, 1);
      continue;
    }
    putRay(left, r);
    move(X, k, left);
    move(Y, k, left);
    move(Z, k, left);
    move(DX, k, left);
    move(DY, k, left);
    move(DZ, k, left);
    move(COSINE, k, left);
    move(PATH, k, left);
    move(NEAREST, k, left);
    put(FROM, left, one(TO, k));
    left++;
  }
  return left;
}

/** Sends the rays of one part of the order, from the `from`-th to the one before the `to`-th, LONGEST_PART at the most. */
export function lookOn(from: i32, to: i32): void {
  let count = 0;
  for (let r = from; r < to; r++) if (!isKnown(r)) putRay(count++, r);
  comeToBall(count);
  count = letIn(count);
  for (let reflections = 0; reflections < MOST_REFLECTIONS && count > 0; reflections++) {
    lookAhead(count);
    findEnds(count);
    step(count);
    count = closeRanks(count);
  }
  for (let k = 0; k < count; k++) {
    const r = rayOf(k);
    store<u8>(fates + r, NEITHER);
    store<u8>(lit + r, 0);
    put(paths, r, MIXED);
  }
  addTo(NEITHER, count);
}
