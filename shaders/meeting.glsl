// What a path meets inside the piece, and what of it leaves there. Twin: src/core/optics/meeting.ts, and tracer.ts for what leaves.

#include "crossing.glsl"

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
