// What is in the glass: analytic where a closed form exists, a march by signed distance where not. Unit sphere.
// Twin: src/core/optics/inside.ts, which tells what each length means.
//
// Set from outside: DESIGNS, which kinds are there (bit k for kind k; 0 when the piece is clear): only their code is compiled. MAX_DESIGNS
// and DESIGN_TEXELS, how many there may be and how many vectors each takes.

#include "random.glsl"
#include "grains.glsl"
#include "tube.glsl"

const int CORE = 0;
const int TINTED_CORE = 1;
const int BUBBLE = 2;
const int RIBBON = 3;
const int PETALS = 4;
const int BACKING = 5;
const int SPECKLE = 6;
const int PICTURE_DISC = 7;
const int PICTURE_CORE = 8;
const int TWIST = 9;
const int MELTED_RIBBON = 10;
const int MELTED_PETALS = 11;
const int SWIRL = 12;
#define HAS_CORE ((DESIGNS & 1) != 0)
#define HAS_TINTED_CORE ((DESIGNS & 2) != 0)
#define HAS_BUBBLE ((DESIGNS & 4) != 0)
#define HAS_RIBBON ((DESIGNS & 8) != 0)
#define HAS_PETALS ((DESIGNS & 16) != 0)
#define HAS_BACKING ((DESIGNS & 32) != 0)
#define HAS_SPECKLE ((DESIGNS & 64) != 0)
#define HAS_PICTURE_DISC ((DESIGNS & 128) != 0)
#define HAS_PICTURE_CORE ((DESIGNS & 256) != 0)
#define HAS_TWIST ((DESIGNS & 512) != 0)
#define HAS_MELTED_RIBBON ((DESIGNS & 1024) != 0)
#define HAS_MELTED_PETALS ((DESIGNS & 2048) != 0)
#define HAS_SWIRL ((DESIGNS & 4096) != 0)
// Coloured glass that light goes through: media.glsl.
#define HAS_MEDIA ((DESIGNS & 7680) != 0)

// A march ends this close to a sheet, gives up after so many steps, and takes this share of the distance at a time.
const float NEAR = 2e-4;
const int MOST_STEPS = 160;
const float CAUTION = 0.8;
// From a ball's wall into it, shorter ways are the start itself.
const float LEAST_CHORD = 1e-5;
// Shape of the clefts between petals.
const float CLEFT = 0.4;
const float CLEFT_SLOPE = 0.35;

// Per design: (centre, kind), (axis x, extra), axis y, axis z, size, colour, second colour, phases; the fourth numbers of the last six
// are what media.glsl says. A picture has, in place of
// its colours, where its front and its back lie among `pictures`: left, top, width, height in pixels; width 0: nothing there.
layout(std140) uniform Designs {
  vec4 designs[MAX_DESIGNS * DESIGN_TEXELS];
};
uniform int designCount;

struct Design {
  int kind;
  // Columns are the design's own x, y, z.
  mat3 axes;
  vec3 centre;
  vec3 size;
  float extra;
};

struct DesignHit {
  // Negative: no hit.
  float t;
  vec3 n;
  vec3 rgb;
  int grain;
};

const DesignHit MISS = DesignHit(-1.0, vec3(0.0), vec3(0.0), 0);

Design designAt(int i) {
  int at = i * DESIGN_TEXELS;
  vec4 x = designs[at + 1];
  mat3 axes = mat3(x.xyz, designs[at + 2].xyz, designs[at + 3].xyz);
  return Design(int(designs[at].w), axes, designs[at].xyz, designs[at + 4].xyz, x.w);
}

vec3 designColour(int i) {
  return designs[i * DESIGN_TEXELS + 5].rgb;
}

// Both distances at which a local ray crosses an ellipsoid; x > y when it passes by.
vec2 crossEllipsoid(vec3 size, vec3 o, vec3 d) {
  vec3 p = o / size;
  vec3 v = d / size;
  float a = dot(v, v);
  float b = dot(p, v);
  // Distance from the centre at the nearest point, without the difference of two large squares.
  vec3 off = p - (b / a) * v;
  float disc = 1.0 - dot(off, off);
  if (disc <= 0.0) return vec2(1.0, -1.0);
  float root = sqrt(disc / a);
  return vec2(-b / a - root, -b / a + root);
}

#if HAS_TINTED_CORE
// Length of the part of a ray, within 0 .. tMax, that runs through a tinted core.
float lengthWithin(Design s, vec3 o, vec3 d, float tMax) {
  vec2 t = crossEllipsoid(s.size, (o - s.centre) * s.axes, d * s.axes);
  return t.x > t.y ? 0.0 : max(0.0, min(tMax, t.y) - max(0.0, t.x));
}
#endif

#if HAS_BUBBLE
bool isWithin(Design s, vec3 p) {
  vec3 q = ((p - s.centre) * s.axes) / s.size;
  return dot(q, q) < 1.0;
}

// Distance from inside a bubble to its wall.
float bubbleExit(Design s, vec3 o, vec3 d) {
  vec2 t = crossEllipsoid(s.size, (o - s.centre) * s.axes, d * s.axes);
  return t.x > t.y ? 0.0 : max(0.0, t.y);
}

vec3 bubbleNormal(Design s, vec3 p) {
  return normalize(p - s.centre);
}
#endif

#if HAS_CORE || HAS_BUBBLE
DesignHit hitEllipsoid(Design s, vec3 rgb, vec3 o, vec3 d, float tMax) {
  vec3 p = (o - s.centre) * s.axes;
  vec3 v = d * s.axes;
  vec2 t = crossEllipsoid(s.size, p, v);
  if (t.x > t.y || t.y <= 0.0 || t.x >= tMax) return MISS;
  // A facet that cuts into the design shows it right behind the glass.
  if (t.x <= 0.0) return DesignHit(0.0, -d, rgb, 0);
  vec3 n = normalize((p + t.x * v) / (s.size * s.size));
  return DesignHit(t.x, s.axes * n, rgb, 0);
}
#endif

#if HAS_BACKING
DesignHit hitBacking(Design s, vec3 rgb, vec3 o, vec3 d, float tMax) {
  float depth = dot(s.axes[2], o) - s.size.x;
  if (depth >= 0.0) return DesignHit(0.0, -d, rgb, 0);
  float towards = dot(s.axes[2], d);
  if (towards <= 0.0) return MISS;
  float t = -depth / towards;
  if (t >= tMax) return MISS;
  return DesignHit(t, -s.axes[2], rgb, 0);
}
#endif

#if HAS_SPECKLE
// One grain (local centre g) against a local ray: its distance, or -1.
float hitGrain(float r, vec3 g, vec3 p, vec3 v, float end) {
  vec3 q = p - g;
  float b = dot(q, v);
  vec3 off = q - b * v;
  float disc = r * r - dot(off, off);
  if (disc <= 0.0) return -1.0;
  float root = sqrt(disc);
  float t = max(0.0, -b - root);
  return -b + root <= 0.0 || t >= end ? -1.0 : t;
}

// Space is cut into cubes with one grain each; those with their centre in the ball are there. Walks from cube to cube
// (Amanatides and Woo, A Fast Voxel Traversal Algorithm, Eurographics 1987).
DesignHit hitGrains(Design s, vec3 rgb, vec3 o, vec3 d, float tMax, int skip) {
  float r = s.size.x;
  float ball = s.size.y;
  float cell = s.size.z;
  vec3 p = (o - s.centre) * s.axes;
  vec3 v = d * s.axes;
  vec2 around = crossEllipsoid(vec3(ball + r), p, v);
  if (around.x > around.y || around.y <= 0.0) return MISS;
  float end = min(tMax, around.y);
  ivec3 cube = ivec3(floor((p + max(0.0, around.x) * v) / cell));
  // Distance along the ray at which it next leaves its cube along each axis, and between such walls.
  vec3 along = max(abs(v), vec3(1e-9));
  ivec3 forward = ivec3(v.x > 0.0 ? 1 : -1, v.y > 0.0 ? 1 : -1, v.z > 0.0 ? 1 : -1);
  vec3 wall = (vec3(cube + max(forward, ivec3(0))) * cell - p) * vec3(forward) / along;
  vec3 between = cell / along;
  for (int step_ = 0; step_ < MOST_CUBES; step_++) {
    int grain = int(cubeNumber(cube));
    vec3 g = grainCentre(r, cell, uint(s.extra), cube);
    if (grain != skip && dot(g, g) < ball * ball) {
      float t = hitGrain(r, g, p, v, end);
      if (t >= 0.0) return DesignHit(t, s.axes * normalize(p + t * v - g), rgb, grain);
    }
    bool isX = wall.x < wall.y && wall.x < wall.z;
    bool isY = !isX && wall.y < wall.z;
    ivec3 axis = isX ? ivec3(1, 0, 0) : isY ? ivec3(0, 1, 0) : ivec3(0, 0, 1);
    if (dot(wall, vec3(axis)) >= end) return MISS;
    cube += axis * forward;
    wall += vec3(axis) * between;
  }
  return MISS;
}
#endif

#if HAS_RIBBON
// Distance to a twisted ribbon: untwist, then a box; shrunk so that it never overshoots.
float ribbonDistance(Design s, vec3 p) {
  float angle = s.extra * p.z;
  float c = cos(angle);
  float n = sin(angle);
  vec3 q = abs(vec3(c * p.x + n * p.y, -n * p.x + c * p.y, p.z)) - s.size;
  float box = length(max(q, 0.0)) + min(0.0, max(q.x, max(q.y, q.z)));
  float reach = min(1.0, length(p.xy));
  return box / sqrt(1.0 + (s.extra * reach) * (s.extra * reach));
}
#endif

#if HAS_PETALS
// Distance to a bowl of petals, open towards +z: a paraboloid sheet within a rosette outline; shrunk likewise.
float petalsDistance(Design s, vec3 p) {
  float r = length(p.xy);
  float lobe = r > 0.0 ? abs(cos(0.5 * s.extra * atan(p.y, p.x))) : 1.0;
  float edge = s.size.x * (1.0 - CLEFT * (1.0 - lobe));
  float level = s.size.y * ((r / s.size.x) * (r / s.size.x) - 0.5);
  float slope = (2.0 * s.size.y * min(r, s.size.x)) / (s.size.x * s.size.x);
  float sheet = (abs(p.z - level) - s.size.z) / sqrt(1.0 + slope * slope);
  float outline = (r - edge) / sqrt(1.0 + (CLEFT_SLOPE * s.extra) * (CLEFT_SLOPE * s.extra));
  return max(sheet, outline);
}
#endif

#if HAS_RIBBON || HAS_PETALS
float sheetDistance(Design s, vec3 p) {
#if HAS_RIBBON && HAS_PETALS
  return s.kind == RIBBON ? ribbonDistance(s, p) : petalsDistance(s, p);
#elif HAS_RIBBON
  return ribbonDistance(s, p);
#else
  return petalsDistance(s, p);
#endif
}

// Central differences; a loop, since every mention of the distance is compiled anew.
vec3 sheetNormal(Design s, vec3 p) {
  vec3 n = vec3(0.0);
  for (int axis = 0; axis < 3; axis++) {
    vec3 step_ = vec3(axis == 0, axis == 1, axis == 2);
    n += step_ * (sheetDistance(s, p + NEAR * step_) - sheetDistance(s, p - NEAR * step_));
  }
  return normalize(n);
}

// A ribbon shows its second colour on its far side, petals fade to theirs towards the tips.
vec3 sheetColour(Design s, int i, vec3 p) {
  vec3 rgb = designColour(i);
  vec3 rgb2 = designs[i * DESIGN_TEXELS + 6].rgb;
  if (s.kind == RIBBON) {
    float angle = s.extra * p.z;
    return -sin(angle) * p.x + cos(angle) * p.y >= 0.0 ? rgb : rgb2;
  }
  return mix(rgb, rgb2, min(1.0, length(p.xy) / s.size.x));
}

// Marches to a ribbon or to petals. A ray that starts on the sheet first has to get clear of it.
DesignHit hitSheet(Design s, int i, vec3 o, vec3 d, float tMax, bool leaving) {
  vec3 p = (o - s.centre) * s.axes;
  vec3 v = d * s.axes;
  vec2 tube = s.kind == RIBBON ? vec2(length(s.size.xy), s.size.z) : vec2(s.size.x, 0.5 * s.size.y + s.size.z);
  vec2 around = crossTube(tube.x + NEAR, tube.y + NEAR, p, v);
  if (around.x > around.y || around.y <= 0.0) return MISS;
  float end = min(tMax, around.y);
  float t = max(0.0, around.x);
  bool clear = !leaving;
  for (int step_ = 0; step_ < MOST_STEPS; step_++) {
    if (t >= end) break;
    vec3 q = p + t * v;
    float distance_ = sheetDistance(s, q);
    if (clear && distance_ < NEAR) {
      return DesignHit(t, s.axes * sheetNormal(s, q), sheetColour(s, i, q), 0);
    }
    clear = clear || distance_ > 2.0 * NEAR;
    t += max(NEAR, CAUTION * distance_);
  }
  return MISS;
}
#endif

#if HAS_PICTURE_DISC || HAS_PICTURE_CORE
// All pictures side by side, sRGB bytes and alpha, rows from the top.
uniform sampler2D pictures;

vec3 linearOfSrgb(vec3 v) {
  return mix(v / 12.92, pow((v + 0.055) / 1.055, vec3(2.4)), step(0.04045, v));
}

// The picture at a place in its own pixels, bilinear in linear light, colour weighed by alpha; rgb is divided by alpha.
vec4 lookUp(ivec4 frame, vec2 at) {
  vec2 corner = floor(at - 0.5);
  vec2 f = at - 0.5 - corner;
  vec4 sum = vec4(0.0);
  for (int k = 0; k < 4; k++) {
    ivec2 step_ = ivec2(k & 1, k >> 1);
    vec2 share = mix(1.0 - f, f, vec2(step_));
    ivec2 pixel = clamp(ivec2(corner) + step_, ivec2(0), frame.zw - 1);
    vec4 texel = texelFetch(pictures, frame.xy + pixel, 0);
    sum += share.x * share.y * texel.a * vec4(linearOfSrgb(texel.rgb), 1.0);
  }
  return sum.a > 0.0 ? vec4(sum.rgb / sum.a, sum.a) : vec4(0.0);
}

// A picture's colour at a place of its own frame; false when chance lets the ray pass or nothing is there.
bool pictureAt(Design s, int i, vec2 place, bool onBack, inout uint random, out vec3 rgb) {
  bool own = onBack && s.extra != 0.0;
  ivec4 frame = ivec4(designs[i * DESIGN_TEXELS + (own ? 6 : 5)]);
  rgb = vec3(0.0);
  if (frame.z == 0) return false;
  vec2 to = vec2(own ? -place.x : place.x, -place.y) / s.size.x;
  vec4 texel = lookUp(frame, (0.5 + 0.5 * to) * vec2(frame.zw));
  rgb = texel.rgb;
  // a sum of four shares may miss 1 by rounding
  return texel.a > 0.99999 || (texel.a > 0.0 && nextRandom(random) < texel.a);
}
#endif

#if HAS_PICTURE_DISC
// A round sheet across its axis: seen from +z it shows its front.
DesignHit hitPictureDisc(Design s, int i, vec3 o, vec3 d, float tMax, inout uint random) {
  vec3 p = (o - s.centre) * s.axes;
  vec3 v = d * s.axes;
  if (v.z == 0.0) return MISS;
  float t = -p.z / v.z;
  vec2 place = p.xy + t * v.xy;
  if (t < 0.0 || t >= tMax || dot(place, place) > s.size.x * s.size.x) return MISS;
  vec3 rgb;
  if (!pictureAt(s, i, place, v.z > 0.0, random, rgb)) return MISS;
  return DesignHit(t, v.z > 0.0 ? -s.axes[2] : s.axes[2], rgb, 0);
}
#endif

#if HAS_PICTURE_CORE
// A ball painted along its axis. Where nothing is painted one looks in, onto the far side's back.
DesignHit hitPictureCore(Design s, int i, vec3 o, vec3 d, float tMax, bool leaving, inout uint random) {
  vec3 p = (o - s.centre) * s.axes;
  vec3 v = d * s.axes;
  vec2 t = crossEllipsoid(s.size, p, v);
  if (t.x > t.y || t.y <= 0.0) return MISS;
  // from its own wall only the far side is ahead
  float near = leaving ? t.x + t.y : max(0.0, t.x);
  float far = leaving ? -1.0 : t.y;
  for (int k = 0; k < 2; k++) {
    float at = k == 0 ? near : far;
    if (at < (leaving ? LEAST_CHORD : 0.0) || at >= tMax) return MISS;
    vec3 q = p + at * v;
    vec3 rgb;
    if (pictureAt(s, i, q.xy, q.z < 0.0, random, rgb))
      return DesignHit(at, at == 0.0 ? -d : s.axes * normalize(q), rgb, 0);
  }
  return MISS;
}
#endif

// Where a ray first meets design i within 0 <= t < tMax. Tinted cores have no surface.
// `from`: the grain it just left (0 for anything but speckles), or -1 when it comes from elsewhere.
DesignHit hitDesign(int i, Design s, vec3 o, vec3 d, float tMax, int from, inout uint random) {
#if HAS_PICTURE_CORE
  if (s.kind == PICTURE_CORE) return hitPictureCore(s, i, o, d, tMax, from >= 0, random);
#endif
#if HAS_RIBBON || HAS_PETALS
  if (s.kind == RIBBON || s.kind == PETALS) return hitSheet(s, i, o, d, tMax, from >= 0);
#endif
#if HAS_SPECKLE
  if (s.kind == SPECKLE) return hitGrains(s, designColour(i), o, d, tMax, from);
#endif
  if (from >= 0) return MISS;
#if HAS_PICTURE_DISC
  if (s.kind == PICTURE_DISC) return hitPictureDisc(s, i, o, d, tMax, random);
#endif
#if HAS_CORE || HAS_BUBBLE
  if (s.kind == CORE || s.kind == BUBBLE) return hitEllipsoid(s, designColour(i), o, d, tMax);
#endif
#if HAS_BACKING
  if (s.kind == BACKING) return hitBacking(s, designColour(i), o, d, tMax);
#endif
  return MISS;
}
