// One light path through the piece, followed backwards from the eye. Twin: src/core/optics/tracer.ts.
//
// A smooth boundary is not left to chance: at each one the share that leaves is gathered at once (outside a convex piece
// nothing but the light can be met) and the path goes on with the share that stays. So a polished clear piece is free of
// noise but for the pixel's area and the wavelength. Radiances inside are divided by n^2, so crossing leaves a weight as it is.
//
// Over a table what leaves downwards sees the table, and what that throws back stands in the light map (see tabletop.glsl), which
// paths from the table upwards have gathered: so a path is one leg. Of all that leaves the inside downwards one part, taken by
// chance, stands for the others.
//
// Set from outside: ROUGH (0 all smooth, 1 rough facets dry, 2 rough facets wet), DESIGNS (see inside.glsl), LIGHT (see
// light.glsl), TABLE (1 with a table), RING (1 where the piece lies on a ring on it), CHANNELS (see spectrum.glsl), CASINGS (see casing.glsl), WAVES (see
// waviness.glsl), EDGES (1 where they are rounded), SEEDS (see seeds.glsl). Compilers put a function's text
// wherever it is called, so the large ones are called from one place each.

#include "random.glsl"
#include "grains.glsl"
#include "fresnel.glsl"
#include "spectrum.glsl"
#include "light.glsl"
#if CASINGS > 0
#include "casing.glsl"
#endif
#if TABLE
#include "tabletop.glsl"
#if RING
#include "ring.glsl"
#endif
#endif
#include "body.glsl"
#include "facing.glsl"
#if EDGES
#include "edges.glsl"
#endif
#if WAVES > 0
#include "waviness.glsl"
#endif
#if SEEDS
#include "seeds.glsl"
#endif
#if ROUGH > 0
#include "finish.glsl"
#endif
#if DESIGNS > 0
#include "inside.glsl"
#if HAS_MEDIA
#include "media.glsl"
#endif
#endif

// The farthest that any path may be followed.
const int MOST_MEETINGS = 256;
// Paths weaker than this are ended by chance, the survivors made up for it.
const float ROULETTE_BELOW = 0.25;
// Paths that met a dark core are weak from there on, and all that is seen of it: they end as a white one's would, down to this.
const float LEAST_WHITENESS = 0.01;
// Surfaces that a path may meet. What is still inside then is light caught for ages between facets: it has been everywhere,
// and the mean of the light all around stands for where it would come from. No energy is lost or made.
uniform int reach;
// No bubble, no design, no grain.
const int NONE = -1;

// What whoever looks past the piece sees.
const int BEHIND_NOTHING = 0;
const int BEHIND_SOFT = 1;
const int BEHIND_LIGHT = 2;
uniform int behind;
// Unit direction of the view: with nothing behind the piece, light from the half-space ahead of it has no colour, and what is
// seen of it lets the page through.
uniform vec3 away;

#if RING
// Times that a ray is followed to the ring: what has been thrown back by it so often is no light any more.
const int RING_MEETINGS = 3;
// A ray that came by the ring sees light: what lies there is no page behind the piece.
bool isOfRing = false;
#else
const bool isOfRing = false;
#endif

bool isPage(vec3 d) {
  return behind == BEHIND_NOTHING && dot(d, away) > 0.0 && !isOfRing;
}

// What one path has gathered.
struct Gathered {
  // Radiance for its wavelength, or red, green and blue without dispersion.
  Amount byWave;
  // What needs no wavelength: a mirror image has a colour but no dispersion.
  vec3 mirror;
  // Share of the ray that sees the page behind the piece: for its wavelength, and in plain light.
  Amount page;
  float plainPage;
  // False when the ray passed by the piece: then no wavelength plays a part.
  bool isPiece;
};

struct Walker {
  vec3 p;
  vec3 d;
  Amount weight;
  // Share seen of the page.
  Amount page;
  // Design and grain just left.
  int design;
  int grain;
  // Bubble it is in.
  int bubble;
  // Seed of its evenly spread chances, and whether that of the first scattering is still to come.
  uint scramble;
  bool isScatterEven;
  // Decides whether it ends, the next time it is weak.
  float roulette;
  // What colours inside have left of a white path: weak is meant by that.
  float whiteness;
};

// Two directions that make a right-handed frame with n (Duff et al., JCGT 6(1), 2017).
mat3 frameOf(vec3 n) {
  float s = n.z >= 0.0 ? 1.0 : -1.0;
  float a = -1.0 / (s + n.z);
  float b = n.x * n.y * a;
  return mat3(vec3(1.0 + s * n.x * n.x * a, s * b, -s * n.x), vec3(b, s + n.y * n.y * a, -n.y), n);
}

// Fresnel for red, green and blue, each at its own mean index.
vec3 mirrorRgb(float cosI) {
  return vec3(
    fresnel(cosI, 1.0 / indexRgb.r),
    fresnel(cosI, 1.0 / indexRgb.g),
    fresnel(cosI, 1.0 / indexRgb.b)
  );
}

Amount gather(vec3 p, vec3 d, PathColour colour) {
  return colourFor(lightFrom(p, d), colour);
}

// This ray's place in an order of its own, so that whether it ends is not tied to its place in the pixel.
uniform uint rouletteIndex;

// The first chance is evenly spread over a pixel's samples: most weak paths are what one facet mirrors back inside, alike all
// over a facet.
float firstRoulette(uint scramble) {
  return radicalInverse(rouletteIndex, hash(scramble + 5u));
}

// Ends weak paths by chance without bias; true when it ended.
bool roulette(inout Walker w, inout uint random) {
  float survive = strongest(w.weight) / (ROULETTE_BELOW * w.whiteness);
  if (survive >= 1.0) return false;
  bool ends = w.roulette >= survive;
  w.roulette = nextRandom(random);
  w.weight /= survive;
  return ends;
}

#if ROUGH > 0
// Sends a ray across a rough facet; true when it goes on outside.
bool crossRough(inout vec3 d, vec3 n, float alpha, bool outside, float index, inout uint random) {
  mat3 frame = frameOf(n);
  Crossing crossing = crossRoughFacet(d * frame, outside, alpha, index, ROUGH == 2, random);
  d = normalize(frame * crossing.d);
  return crossing.outside;
}
#endif

// Chance takes the mirrored or the refracted way at a smooth boundary; true when it went through. `n` stands against d.
bool crossByChance(inout vec3 d, vec3 n, float eta, inout uint random) {
  float cosI = -dot(d, n);
  bool through = nextRandom(random) >= fresnel(cosI, eta);
  d = through ? refractRay(d, n, cosI, eta) : reflectRay(d, n, cosI);
  return through;
}

#if SEEDS
// Walls of one seed that a path may meet: what is still in it then is next to nothing.
const int MOST_WALLS = 16;

// Comes to a seed's wall and, mirrored there or through its air, leaves it again.
void crossSeed(inout Walker w, SeedHit seed, float index, inout uint random) {
  w.p += seed.t * w.d;
  w.design = NONE;
  if (!crossByChance(w.d, normalize(w.p - seed.centre), index, random)) return;
  for (int k = 0; k < MOST_WALLS; k++) {
    w.p -= 2.0 * dot(w.d, w.p - seed.centre) * w.d;
    if (crossByChance(w.d, normalize(seed.centre - w.p), 1.0 / index, random)) return;
  }
}
#endif

// Sobol numbers of this sample for the first scattering, their bits turned round; the same for all pixels.
uniform uint scatterSobol1;
uniform uint scatterSobol2;

vec2 firstScatterPair(uint scramble) {
  return vec2(radicalInverse(scatterSobol1, hash(scramble + 3u)), radicalInverse(scatterSobol2, hash(scramble + 4u)));
}

#if DESIGNS > 0 || RING
// Direction about n with density cos / pi.
vec3 scatterDiffuse(vec3 n, vec2 pair) {
  float phi = 2.0 * PI * pair.y;
  return frameOf(n) * vec3(sqrt(pair.x) * cos(phi), sqrt(pair.x) * sin(phi), sqrt(1.0 - pair.x));
}
#endif

#if RING
// From where the ring is met, on from it: some direction, by chance.
void leaveRing(RingHit ring, inout vec3 p, inout vec3 d, inout uint random) {
  p += ring.t * d + RING_LIFT * ring.n;
  float first = nextRandom(random);
  d = scatterDiffuse(ring.n, vec2(first, nextRandom(random)));
}
#endif

#if DESIGNS > 0
// Two numbers for a scattering direction: evenly spread over a pixel's samples the first time, plain chance after that.
vec2 scatterPair(inout Walker w, inout uint random) {
  if (!w.isScatterEven) {
    float first = nextRandom(random);
    return vec2(first, nextRandom(random));
  }
  w.isScatterEven = false;
  return firstScatterPair(w.scramble);
}

#if HAS_MEDIA
// Scattered within melted glass: all directions alike.
void scatterInMedium(inout Walker w, float t, inout uint random) {
  w.p += t * w.d;
  w.design = NONE;
  w.grain = NONE;
  vec2 pair = scatterPair(w, random);
  float z = 1.0 - 2.0 * pair.x;
  float level = sqrt(max(0.0, 1.0 - z * z));
  w.d = vec3(level * cos(2.0 * PI * pair.y), level * sin(2.0 * PI * pair.y), z);
}
#endif

#if HAS_BUBBLE
// The bubble that holds p, or NONE.
int bubbleAt(vec3 p) {
  for (int i = 0; i < MAX_DESIGNS; i++) {
    if (i >= designCount) break;
    Design s = designAt(i);
    if (s.kind == BUBBLE && isWithin(s, p)) return i;
  }
  return NONE;
}
#endif

#if HAS_TINTED_CORE
// What tinted cores let through along a stretch.
Amount throughTints(Walker w, float t, PathColour colour) {
  Amount through = Amount(1.0);
  for (int i = 0; i < MAX_DESIGNS; i++) {
    if (i >= designCount) break;
    Design s = designAt(i);
    if (s.kind != TINTED_CORE) continue;
    float along = lengthWithin(s, w.p, w.d, t);
    // A tinted core shows its colour along its whole width.
    through *= exp(-absorptionOfTint(colourFor(designColour(i), colour), 2.0 * s.size.x) * along);
  }
  return through;
}
#endif

// Nearest design within tMax; NONE when there is none.
int nearestDesign(Walker w, float tMax, out DesignHit nearest, inout uint random) {
  int found = NONE;
  nearest = MISS;
  for (int i = 0; i < MAX_DESIGNS; i++) {
    if (i >= designCount) break;
    DesignHit hit = hitDesign(i, designAt(i), w.p, w.d, tMax, i == w.design ? w.grain : NONE, random);
    if (hit.t < 0.0) continue;
    nearest = hit;
    found = i;
    tMax = hit.t;
  }
  return found;
}

// Opaque designs scatter evenly, a bubble's wall is a boundary to air.
void meetDesign(inout Walker w, DesignHit hit, int design, PathColour colour, inout uint random) {
  w.p += hit.t * w.d;
  w.design = design;
  w.grain = hit.grain;
  vec3 n = dot(hit.n, w.d) < 0.0 ? hit.n : -hit.n;
#if HAS_BUBBLE
  if (designAt(design).kind == BUBBLE) {
    if (crossByChance(w.d, n, colour.index, random)) w.bubble = design;
    return;
  }
#endif
  Amount left = colourFor(hit.rgb, colour);
  w.weight *= left;
  w.whiteness = max(LEAST_WHITENESS, w.whiteness * strongest(left));
  w.d = scatterDiffuse(n, scatterPair(w, random));
}

#if HAS_BUBBLE
// Crosses the air in a bubble. True when it leaves through a facet that opens the bubble, at distance `facet`; false when it
// meets the wall.
bool crossBubble(inout Walker w, float facet, PathColour colour, inout uint random) {
  Design bubble = designAt(w.bubble);
  float t = bubbleExit(bubble, w.p, w.d);
  w.p += min(facet, t) * w.d;
  if (facet < t) return true;
  w.design = w.bubble;
  w.grain = 0;
  if (crossByChance(w.d, -bubbleNormal(bubble, w.p), 1.0 / colour.index, random)) w.bubble = NONE;
  return false;
}
#endif
#endif

// What leaves the piece at one meeting: how much of the path, which way, and whether nothing stays.
struct Leaving {
  Amount share;
  vec3 d;
  bool isAll;
};

// Meets the body's surface from within.
Leaving meetBody(inout Walker w, Surface surface, PathColour colour, inout uint random) {
  w.design = NONE;
#if ROUGH > 0
  float alpha = roughnessOf(surface.id);
  if (alpha > 0.0) {
    bool left = crossRough(w.d, surface.n, alpha, false, colour.index, random);
    return Leaving(left ? w.weight : Amount(0.0), w.d, left);
  }
#endif
#if WAVES > 0
  if (surface.id == SKIN) surface.n = facingNormal(w.p, surface.n, w.d);
#endif
  float cosI = max(LEAST_COSINE, dot(w.d, surface.n));
  float cosT = cosRefracted(cosI, colour.index);
  float mirrored = fresnelOf(cosI, cosT, colour.index);
  Leaving leaving = Leaving((1.0 - mirrored) * w.weight, refracted(w.d, -surface.n, cosI, cosT, colour.index), false);
  w.weight *= mirrored;
  w.d = reflectRay(w.d, -surface.n, cosI);
  return leaving;
}

// One step of a path that is inside: to what it meets next, and what of it leaves there.
Leaving meetNext(inout Walker w, PathColour colour, inout uint random) {
  Surface ahead = leaveBody(w.p, w.d);
  float t = ahead.t;
#if SEEDS
  SeedHit seed = nextSeed(w.p, w.d, t);
  if (seed.t >= 0.0) t = seed.t;
#endif
#if DESIGNS > 0
#if HAS_BUBBLE
  if (w.bubble != NONE) {
    bool left = crossBubble(w, ahead.t, colour, random);
    return Leaving(left ? w.weight : Amount(0.0), w.d, left);
  }
#endif
  DesignHit hit;
  int met = nearestDesign(w, t, hit, random);
  if (met != NONE) t = hit.t;
#if HAS_MEDIA
  float depth = -log(max(1e-7, 1.0 - nextRandom(random)));
  Passage passage = passMediaBy(w.p, w.d, t, depth, nextRandom(random), colour);
  t = passage.t;
  w.weight *= passage.left;
#endif
#if HAS_TINTED_CORE
  w.weight *= throughTints(w, t, colour);
#endif
#endif
  Amount taken = colour.sigma * t;
#if CASINGS > 0
  taken += takenByCasings(w.p, w.d, t, colour);
#endif
  w.weight *= exp(-taken);
  if (roulette(w, random)) return Leaving(Amount(0.0), w.d, true);
#if DESIGNS > 0
#if HAS_MEDIA
  if (passage.scattered) {
    scatterInMedium(w, t, random);
    return Leaving(Amount(0.0), w.d, false);
  }
#endif
  if (met != NONE) {
    meetDesign(w, hit, met, colour, random);
    return Leaving(Amount(0.0), w.d, false);
  }
#endif
#if SEEDS
  if (seed.t >= 0.0) {
    crossSeed(w, seed, colour.index, random);
    return Leaving(Amount(0.0), w.d, false);
  }
#endif
  w.p += t * w.d;
  return meetBody(w, ahead, colour, random);
}

#if TABLE
// Of all that leaves the inside downwards, the part that is followed.
struct Down {
  // Where it meets the table.
  vec3 q;
  // Whether the page is seen there.
  bool isPage;
  // For each unit of `sum`.
  Amount weight;
  // Strength of all parts.
  float sum;
};

// Each part is taken with the chance of its strength.
void offer(inout Down down, vec3 q, bool isPage, Amount weight, inout uint random) {
  float strength = strongest(weight);
  if (strength <= 0.0) return;
  down.sum += strength;
  if (nextRandom(random) * down.sum >= strength) return;
  down.q = q;
  down.isPage = isPage;
  down.weight = weight / strength;
}

// By how much more the page shows than where nothing stands on a table that is not shown itself: what it throws back of the
// light, for each unit of what it would throw back there. Less than 1 in a shadow.
Amount shadeOf(vec3 thrown, vec3 q, PathColour colour) {
  return colourFor(thrown, colour) / max(Amount(1e-6), colourFor(bareAt(q), colour));
}
#endif

// Follows a path that is inside; what it meets of chance is used up.
Amount followInside(inout Walker w, PathColour colour, inout uint random) {
  Amount sum = Amount(0.0);
#if TABLE
  Down down = Down(w.p, false, Amount(0.0), 0.0);
#endif
  for (int meetings = 1; meetings < MOST_MEETINGS; meetings++) {
    if (meetings >= reach) break;
    Leaving leaving = meetNext(w, colour, random);
    bool leaves = strongest(leaving.share) > 0.0;
    vec3 from = w.p;
    bool isByRing = isOfRing;
#if TABLE
#if RING
    // What the ring throws back into the glass is seen as if that were not in the ring's own way.
    for (int k = 0; k < RING_MEETINGS && leaves; k++) {
      RingHit ring = hitRing(tableUp, tableHeight, from, leaving.d, RING_FAR);
      if (ring.t < 0.0) break;
      leaves = k < RING_MEETINGS - 1;
      isByRing = true;
      leaving.share *= colourFor(RING_RGB, colour);
      leaveRing(ring, from, leaving.d, random);
    }
#endif
    if (leaves && goesDown(leaving.d)) {
      offer(down, pointOnTable(from, leaving.d), !isByRing && isPage(leaving.d), leaving.share, random);
      leaves = false;
    }
#endif
    if (leaves && !isByRing && isPage(leaving.d)) w.page += leaving.share;
    else if (leaves) sum += leaving.share * gather(from, leaving.d, colour);
    if (leaving.isAll) {
      w.weight = Amount(0.0);
      break;
    }
  }
#if TABLE
  if (down.sum > 0.0) {
    vec3 thrown = thrownBackAt(down.q);
    Amount weight = down.sum * down.weight;
    if (down.isPage) w.page += weight * shadeOf(thrown, down.q, colour);
    else sum += weight * colourFor(reflectanceAt(down.q) * thrown, colour);
  }
#endif
  return sum + w.weight * colourFor(lightAround, colour);
}

// What a ray does at the first surface: where it looks for light outside and how much of that is its mirror image, and
// whether it goes on inside, all of it or what is not mirrored.
struct Entering {
  vec3 outwards;
  vec3 mirrored;
  bool isInside;
};

Entering enterPiece(inout Walker w, Surface entry, PathColour colour, inout uint random) {
#if DESIGNS > 0
#if HAS_BUBBLE
  // A facet that opens a bubble is a hole: no glass there.
  w.bubble = bubbleAt(w.p);
  if (w.bubble != NONE) return Entering(w.d, vec3(0.0), true);
#endif
#endif
#if ROUGH > 0
  float alpha = roughnessOf(entry.id);
  if (alpha > 0.0) {
    bool outside = crossRough(w.d, entry.n, alpha, true, colour.index, random);
    return Entering(w.d, vec3(0.0), !outside);
  }
#endif
#if WAVES > 0
  if (entry.id == SKIN) entry.n = facingNormal(w.p, entry.n, w.d);
#endif
#if EDGES
  entry.n = roundedNormal(entry.id, w.p, entry.n, w.d);
#endif
  float cosI = -dot(w.d, entry.n);
  float eta = 1.0 / colour.index;
  float cosT = cosRefracted(cosI, eta);
  vec3 mirror = reflectRay(w.d, entry.n, cosI);
  w.weight *= 1.0 - fresnelOf(cosI, cosT, eta);
  w.d = refracted(w.d, entry.n, cosI, cosT, eta);
  return Entering(mirror, mirrorRgb(cosI), true);
}

// What is to be seen outside the piece: what needs no wavelength, and the share of the page in plain light and, where that is a
// table's shade, for the path's wavelength.
struct Outlook {
  vec3 rgb;
  float plainPage;
  Amount page;
};

// From p along d, mirrored by the piece or past it.
Outlook lookOut(vec3 p, vec3 d, bool isPiece, PathColour colour, inout uint random) {
  vec3 wood = vec3(1.0);
  bool isByRing = isOfRing;
#if TABLE
#if RING
  // A ray past the piece has met it already.
  for (int k = 0; k < RING_MEETINGS && isPiece; k++) {
    RingHit ring = hitRing(tableUp, tableHeight, p, d, RING_FAR);
    if (ring.t < 0.0) break;
    if (k == RING_MEETINGS - 1) return Outlook(vec3(0.0), 0.0, Amount(0.0));
    wood *= RING_RGB;
    isByRing = true;
    leaveRing(ring, p, d, random);
  }
#endif
  if (goesDown(d)) {
    vec3 q = pointOnTable(p, d);
    vec3 thrown = thrownBackAt(q);
    // The table behind the piece is not shown, but what the piece changes of its light.
    if (!isByRing && isPage(d)) return Outlook(vec3(0.0), 0.0, shadeOf(thrown, q, colour));
    return Outlook(wood * reflectanceAt(q) * thrown, 0.0, Amount(0.0));
  }
#endif
  if (isByRing) return Outlook(wood * lightFrom(p, d), 0.0, Amount(0.0));
  bool seesPage = isPiece ? isPage(d) : behind == BEHIND_NOTHING;
  bool seesLight = isPiece ? !seesPage : behind == BEHIND_LIGHT;
  vec3 rgb = seesLight ? lightFrom(p, d) : behind == BEHIND_SOFT ? softFrom(d) : vec3(0.0);
  return Outlook(rgb, seesPage ? 1.0 : 0.0, Amount(0.0));
}

// Radiance that a ray from outside the piece brings back. Past the piece, nothing lets the page show.
// `isScatterEven`: the first scattering inside has the evenly spread numbers; false where they have made the ray itself.
Gathered tracePath(vec3 o, vec3 d, PathColour colour, uint scramble, bool isScatterEven, inout uint random) {
  Surface entry;
  vec3 wood = vec3(1.0);
#if RING
  isOfRing = false;
  for (int k = 0; k < RING_MEETINGS; k++) {
    entry = enterBody(o, d);
    RingHit ring = hitRing(tableUp, tableHeight, o, d, entry.id == NOTHING ? RING_FAR : entry.t);
    if (ring.t < 0.0) break;
    if (k == RING_MEETINGS - 1) return Gathered(Amount(0.0), vec3(0.0), Amount(0.0), 0.0, true);
    wood *= RING_RGB;
    isOfRing = true;
    leaveRing(ring, o, d, random);
  }
#else
  entry = enterBody(o, d);
#endif
  bool isPiece = entry.id != NOTHING;
  Walker w = Walker(o + entry.t * d, d, Amount(1.0), Amount(0.0), NONE, 0, NONE, scramble, isScatterEven, firstRoulette(scramble), 1.0);
  Entering first = Entering(d, vec3(1.0), false);
  if (isPiece) first = enterPiece(w, entry, colour, random);
  Outlook outer = lookOut(o + entry.t * d, first.outwards, isPiece, colour, random);
  outer.rgb *= wood;
  // A rough facet took its way by the wavelength.
  if (isPiece && !first.isInside)
    return Gathered(colourFor(outer.rgb, colour), vec3(0.0), outer.page + outer.plainPage, 0.0, true);
  w.page = (first.isInside ? Amount(1.0) - w.weight : Amount(1.0)) * outer.page;
  Amount inner = Amount(0.0);
  if (first.isInside) inner = followInside(w, colour, random);
#if RING
  inner *= colourFor(wood, colour);
#endif
  float plainPage = isPiece ? luminance(first.mirrored) * outer.plainPage : outer.plainPage;
  return Gathered(inner, first.mirrored * outer.rgb, w.page, plainPage, isPiece || strongest(w.page) > 0.0);
}
