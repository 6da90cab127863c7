// Coloured glass melted into clear glass of the same index: density, colour and free distance of a place, and a ray's way through.
// Twins: src/core/inside/media.ts, which tells the shapes, and src/core/optics/pass-media.ts.
//
// Set from outside: LONE_MEDIUM, the place of the only medium among the designs, or -1 where there are several: what is the same all
// along a ray is then reckoned once.

#include "tube.glsl"

// A place of a medium: distance to go before the density begins or ends, density 0 .. 1, mix of both colours.
struct MediumPoint {
  float distance_;
  float density;
  float mix_;
};

// What a medium is beside its frame; see `more` in the twin.
struct Medium {
  float over;
  float irregular;
  vec4 shape;
  vec3 phase;
};

Medium mediumAt(int i) {
  int at = i * DESIGN_TEXELS;
  vec4 last = designs[at + 7];
  vec4 shape = vec4(designs[at + 4].w, designs[at + 5].w, designs[at + 6].w, last.w);
  return Medium(designs[at + 2].w, designs[at + 3].w, shape, last.xyz);
}

float easedTo(float x) {
  float t = clamp(x, 0.0, 1.0);
  return t * t * (3.0 - 2.0 * t);
}

float meltedAt(float distance_, float over, float halfThick) {
  return easedTo(-distance_ / min(over, 0.9 * halfThick));
}

const float SHAKES = 4.0;
const float PUSH = 0.1;
const float SLOPE = 1.5 * SHAKES * PUSH;
const float VEIL = 0.2;
const float MELTED_CLEFT = 0.5;
const float MELTED_CLEFT_SLOPE = 0.45;
const float VEIN = 0.14;
const float TWO_PI = 6.283185307179586;

// A place before the hand shook.
vec3 unshaken(Design s, Medium m, vec3 p) {
  if (m.irregular == 0.0) return p;
  float k = SHAKES / max(s.size.x, s.size.y);
  float push = m.irregular * PUSH * max(s.size.x, s.size.y);
  return p + push * (sin(k * p.yzx + m.phase) + 0.5 * sin(1.9 * k * p.zxy + m.phase.yzx));
}

float angleOf(vec2 p) {
  return p == vec2(0.0) ? 0.0 : atan(p.y, p.x);
}

// Distance between two places at distances a and b from the axis, by the angle between them; good also where a device's sine is not.
float chord(float a, float b, float angle) {
  float s = sin(0.5 * angle);
  return sqrt((a - b) * (a - b) + 4.0 * a * b * s * s);
}

#if HAS_TWIST
MediumPoint twistAt(Design s, Medium m, vec3 p) {
  float rate = m.shape.x;
  float radius = s.size.x;
  float along = clamp(p.z / s.size.y, -1.0, 1.0);
  float turn = rate * p.z + 0.5 * m.irregular * sin(2.5 * along + m.phase.z);
  float narrow = 1.0 - 0.5 * m.shape.z * (1.0 - along);
  float r = length(p.xy);
  float angle = angleOf(p.xy) - turn;
  float sector = TWO_PI / m.shape.y;
  float nearest = floor(angle / sector + 0.5);
  float own = 0.5 * s.size.z * narrow * (1.0 + 0.35 * m.irregular * sin(sector * nearest + 2.0 * along + m.phase.y));
  float ring = (radius - 0.5 * s.size.z) * narrow;
  float strand = chord(r, ring, angle - nearest * sector) - own;
  float end = abs(p.z) - s.size.y;
  float distance_ = strand;
  float density = meltedAt(strand, m.over, own);
  float mix_ = 0.0;
  if (m.shape.w > 0.0) {
    float step_ = TWO_PI / m.shape.w;
    float off = angle / step_ - 0.5;
    float fine = VEIL * s.size.z * narrow;
    float outer = radius * narrow;
    float away = (off - floor(off + 0.5)) * step_;
    float thread = chord(r, outer, away) - fine;
    float dense = meltedAt(thread, m.over, fine);
    distance_ = min(distance_, thread);
    if (dense > density) {
      density = dense;
      mix_ = 1.0;
    }
  }
  float reach_ = rate * min(r, radius);
  float slope = sqrt(1.0 + reach_ * reach_) + m.shape.z * radius / s.size.y + m.irregular * SLOPE;
  return MediumPoint(max(distance_ / slope, end), density * meltedAt(end, 3.0 * m.over, s.size.y), mix_);
}
#endif

#if HAS_MELTED_RIBBON
MediumPoint meltedRibbonAt(Design s, Medium m, vec3 p) {
  float along = clamp(p.z / s.size.y, -1.0, 1.0);
  float turn = m.shape.x * p.z + 0.4 * m.irregular * sin(2.5 * along + m.phase.z);
  float co = cos(turn);
  float si = sin(turn);
  vec2 q = vec2(co * p.x + si * p.y, -si * p.x + co * p.y);
  float wide = s.size.x * (1.0 + 0.2 * m.irregular * sin(3.0 * along + m.phase.x));
  float high = 0.5 * s.size.z * (1.0 + 0.4 * m.irregular * sin(4.0 * along + m.phase.y));
  vec2 axes = vec2(wide, high);
  float near = length(q / axes);
  float across = near < 1e-6 ? -high : near * (near - 1.0) / length(q / (axes * axes));
  float end = abs(p.z) - s.size.y;
  float reach_ = m.shape.x * min(1.0, length(p.xy));
  float slope = sqrt(1.0 + reach_ * reach_) + m.irregular * SLOPE;
  float density = meltedAt(across, m.over, high) * meltedAt(end, 3.0 * m.over, s.size.y);
  return MediumPoint(max(across / slope, end), density, easedTo(0.5 - 2.0 * q.y / high));
}
#endif

#if HAS_MELTED_PETALS
MediumPoint meltedPetalsAt(Design s, Medium m, vec3 p) {
  float number = m.shape.x;
  float vein = m.shape.y;
  float depth = m.shape.z;
  float radius = s.size.x;
  float r = length(p.xy);
  float angle = angleOf(p.xy);
  float sector = TWO_PI / number;
  float nearest = floor(angle / sector + 0.5);
  float from = angle - nearest * sector;
  float lobe = abs(cos(0.5 * TWO_PI * from / sector));
  float own = cos(TWO_PI * nearest / number + m.phase.x) + sin(2.0 * TWO_PI * nearest / number + m.phase.y);
  float edge = radius * (1.0 - 0.1 * m.irregular * (1.0 + 0.5 * own)) * (1.0 - MELTED_CLEFT * (1.0 - lobe));
  float share = min(1.0, r / edge);
  float high = 0.5 * s.size.z * (1.0 - 0.65 * share * share);
  float level = depth * ((r / radius) * (r / radius) - 0.5);
  float steep = 2.0 * depth * min(r, radius) / (radius * radius);
  float sheet = (abs(p.z - level) - high) / sqrt(1.0 + steep * steep);
  float outline = r - edge;
  float line = vein * VEIN * radius * (1.0 - 0.8 * share);
  float onVein = vein > 0.0 ? 1.0 - easedTo(abs(from) * r / max(line, 1e-6) - 0.5) : 0.0;
  float slope = sqrt(1.0 + MELTED_CLEFT_SLOPE * number * MELTED_CLEFT_SLOPE * number);
  float density = meltedAt(sheet, m.over, high) * meltedAt(outline, 2.0 * m.over, radius);
  return MediumPoint(
    max(sheet, outline / slope) / (1.0 + m.irregular * SLOPE),
    density,
    max(share * share * (1.0 - vein), onVein)
  );
}
#endif

#if HAS_SWIRL
MediumPoint swirlAt(Design s, Medium m, vec3 p) {
  float wind = m.shape.y;
  float depth = m.shape.z;
  float radius = s.size.x;
  float r = length(p.xy);
  float share = min(1.0, r / radius);
  float angle = angleOf(p.xy) - wind * (1.0 - share) - 0.4 * m.irregular * sin(5.0 * share + m.phase.x);
  float sector = TWO_PI / m.shape.x;
  float from = angle - floor(angle / sector + 0.5) * sector;
  float wide = 0.3 * sector * r * (1.0 - 0.7 * share) + 0.5 * s.size.z;
  float high = 0.5 * s.size.z * (1.0 - 0.6 * share);
  float level = depth * (share - 0.5);
  float sheet = (abs(p.z - level) - high) / sqrt(1.0 + (depth / radius) * (depth / radius));
  float side = abs(from) * r - wide;
  float outline = r - radius;
  float twisted = abs(wind) * share + 2.0 * m.irregular;
  float slope = sqrt(1.0 + twisted * twisted) + 1.0;
  float density = meltedAt(sheet, m.over, high) * meltedAt(side, m.over, wide) * meltedAt(outline, 3.0 * m.over, radius);
  return MediumPoint(max(sheet, max(side / slope, outline)) / (1.0 + m.irregular * SLOPE), density, share * share);
}
#endif

MediumPoint placeIn(Design s, Medium m, vec3 at) {
  vec3 p = unshaken(s, m, at);
#if HAS_TWIST
  if (s.kind == TWIST) return twistAt(s, m, p);
#endif
#if HAS_MELTED_RIBBON
  if (s.kind == MELTED_RIBBON) return meltedRibbonAt(s, m, p);
#endif
#if HAS_MELTED_PETALS
  if (s.kind == MELTED_PETALS) return meltedPetalsAt(s, m, p);
#endif
#if HAS_SWIRL
  if (s.kind == SWIRL) return swirlAt(s, m, p);
#endif
  return MediumPoint(1.0, 0.0, 0.0);
}

bool isMedium(Design s) {
  return s.kind == TWIST || s.kind == MELTED_RIBBON || s.kind == MELTED_PETALS || s.kind == SWIRL;
}

// Both distances at which a local ray crosses the tube that holds a medium; x > y when it passes by.
vec2 crossMedium(Design s, Medium m, vec3 o, vec3 d) {
  float room = 1.5 * PUSH * m.irregular * max(s.size.x, s.size.y);
  return crossTube(s.size.x + room + 0.5 * s.size.z, s.size.y + room, o, d);
}

const float MILKY_DEPTH = 8.0;
const float DARKEST_MILK = 1e-3;

Amount absorptionBesideScattering(Amount colour) {
  Amount a = clamp(colour, Amount(DARKEST_MILK), Amount(1.0));
  Amount b = 1.139 + 1.17 * a;
  Amount s = (2.0 * (1.0 - a)) / (b + sqrt(b * b - 4.0 * 0.139 * (1.0 - a)));
  Amount albedo = 1.0 - s * s;
  return (1.0 - albedo) / max(Amount(DARKEST_MILK), albedo);
}

float scatteringOf(Design s) {
  return MILKY_DEPTH * s.extra * s.extra / s.size.z;
}

Amount absorptionIn(Design s, Amount colour) {
  return (1.0 - s.extra) * absorptionOfTint(colour, s.size.z) + scatteringOf(s) * absorptionBesideScattering(colour);
}

// What a medium takes of a path where it is dense, by unit length: absorbed in each of its colours, and scattered.
struct Taking {
  Amount one;
  Amount other;
  float scatters;
};

Taking takingOf(Design s, int i, PathColour colour) {
  Amount one = absorptionIn(s, colourFor(designColour(i), colour));
  Amount other = absorptionIn(s, colourFor(designs[i * DESIGN_TEXELS + 6].rgb, colour));
  return Taking(one, other, scatteringOf(s));
}

// A place on the way, as all media together have it.
struct MediaPlace {
  Amount takes;
  float scatters;
  // How far all stay as they are.
  float free;
};

void addMedium(inout MediaPlace here, Design s, Medium m, Taking taking, vec3 at) {
  MediumPoint place = placeIn(s, m, (at - s.centre) * s.axes);
  here.free = min(here.free, abs(place.distance_));
  if (place.density <= 0.0) return;
  here.takes += place.density * mix(taking.one, taking.other, place.mix_);
  here.scatters += place.density * taking.scatters;
}

// Where a way comes into the first of the media and out of the last, and how thin the thinnest of them is.
struct MediaStretch {
  float start;
  float end;
  float thinnest;
};

void addStretch(inout MediaStretch way, Design s, Medium m, vec3 o, vec3 d) {
  vec2 around = crossMedium(s, m, (o - s.centre) * s.axes, d * s.axes);
  if (around.x >= around.y) return;
  way.start = min(way.start, around.x);
  way.end = max(way.end, around.y);
  way.thinnest = min(way.thinnest, s.size.z);
}

const int MOST_MEDIA_STEPS = 160;
const float FINE = 0.1;

// How far a ray gets, whether it was scattered there, and the share that is left.
struct Passage {
  float t;
  bool scattered;
  Amount left;
};

// `depth`: scatterings after which it scatters; `first`: share of the least step that the first one takes.
Passage passMediaBy(vec3 o, vec3 d, float tMax, float depth, float first, PathColour colour) {
  MediaStretch way = MediaStretch(tMax, 0.0, 1.0);
#if LONE_MEDIUM >= 0
  Design lone = designAt(LONE_MEDIUM);
  Medium loneMedium = mediumAt(LONE_MEDIUM);
  addStretch(way, lone, loneMedium, o, d);
#else
  for (int i = 0; i < MAX_DESIGNS; i++) {
    if (i >= designCount) break;
    Design s = designAt(i);
    if (isMedium(s)) addStretch(way, s, mediumAt(i), o, d);
  }
#endif
  float start = max(0.0, way.start);
  float end = min(tMax, way.end);
  Passage passage = Passage(tMax, false, Amount(1.0));
  if (start >= end) return passage;
#if LONE_MEDIUM >= 0
  Taking loneTaking = takingOf(lone, LONE_MEDIUM, colour);
#endif
  float least = max(FINE * way.thinnest, (end - start) / float(MOST_MEDIA_STEPS));
  Amount absorbed = Amount(0.0);
  Amount takesBefore = Amount(0.0);
  float scattersBefore = 0.0;
  float met = 0.0;
  float t = start;
  float stretch = 0.0;
  for (int step_ = 0; step_ <= MOST_MEDIA_STEPS; step_++) {
    MediaPlace here = MediaPlace(Amount(0.0), 0.0, 1.0);
#if LONE_MEDIUM >= 0
    addMedium(here, lone, loneMedium, loneTaking, o + t * d);
#else
    for (int i = 0; i < MAX_DESIGNS; i++) {
      if (i >= designCount) break;
      Design s = designAt(i);
      if (isMedium(s)) addMedium(here, s, mediumAt(i), takingOf(s, i, colour), o + t * d);
    }
#endif
    float more = 0.5 * stretch * (scattersBefore + here.scatters);
    passage.scattered = more > 0.0 && met + more >= depth;
    float share = passage.scattered ? (depth - met) / more : 1.0;
    absorbed += share * 0.5 * stretch * (takesBefore + here.takes);
    if (passage.scattered) {
      passage.t = t - (1.0 - share) * stretch;
      break;
    }
    if (t >= end) break;
    met += more;
    takesBefore = here.takes;
    scattersBefore = here.scatters;
    float far = least * (step_ == 0 ? first : max(1.0, floor(CAUTION * here.free / least)));
    stretch = min(far, end - t);
    t = far < end - t ? t + far : end;
  }
  passage.left = exp(-absorbed);
  return passage;
}
