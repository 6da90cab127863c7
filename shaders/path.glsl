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
#include "meeting.glsl"

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
