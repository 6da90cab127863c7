// A small ring of wood that the piece lies on, its foot on the table: where it stands in a way. Twin: src/core/optics/ring.ts.

// Radii of the tube's inner and outer wall, and how high it is.
const float RING_INNER = 0.44;
const float RING_OUTER = 0.52;
const float RING_HIGH = 0.2;
// What it throws back, and how far above it what leaves it starts.
const vec3 RING_RGB = vec3(0.125, 0.07, 0.042);
const float RING_LIFT = 1e-5;
// Farther than anything near the piece.
const float RING_FAR = 1e9;

// From where to where a t^2 + 2 b t + c <= 0, as along a line where it is within a cylinder; no way at all for nowhere.
vec2 withinCylinder(float a, float b, float c) {
  float disc = b * b - a * c;
  if (a <= 0.0) return c <= 0.0 ? vec2(-RING_FAR, RING_FAR) : vec2(RING_FAR, -RING_FAR);
  if (disc <= 0.0) return vec2(RING_FAR, -RING_FAR);
  float root = sqrt(disc);
  return vec2(-b - root, -b + root) / a;
}

// Where a way meets the ring and its unit normal there, against the way; t < 0 for nowhere.
struct RingHit {
  float t;
  vec3 n;
};
const RingHit NO_RING = RingHit(-1.0, vec3(0.0));

// Where the ring whose foot lies so high along unit `up` first stands in the way from p along unit d, nearer than tMax.
RingHit hitRing(vec3 up, float foothold, vec3 p, vec3 d, float tMax) {
  float height = dot(p, up) - foothold;
  float rise = dot(d, up);
  vec2 way = vec2(0.0, tMax);
  bool isWall = true;
  if (rise == 0.0) {
    if (height <= 0.0 || height >= RING_HIGH) return NO_RING;
  } else {
    float foot = -height / rise;
    float rim = (RING_HIGH - height) / rise;
    isWall = min(foot, rim) < 0.0;
    way = vec2(max(way.x, min(foot, rim)), min(way.y, max(foot, rim)));
  }
  vec3 aside = cross(up, p);
  vec3 ahead = cross(up, d);
  float a = dot(ahead, ahead);
  float b = dot(aside, ahead);
  float square = dot(aside, aside);
  vec2 outer = withinCylinder(a, b, square - RING_OUTER * RING_OUTER);
  isWall = isWall || outer.x > way.x;
  way = vec2(max(way.x, outer.x), min(way.y, outer.y));
  if (way.x >= way.y) return NO_RING;
  vec2 hole = withinCylinder(a, b, square - RING_INNER * RING_INNER);
  bool isInHole = hole.x < hole.y && way.x >= hole.x && way.x < hole.y;
  // All of that way may lie in the hole.
  if (isInHole && way.y <= hole.y) return NO_RING;
  float t = isInHole ? hole.y : way.x;
  vec3 q = p + t * d;
  vec3 n = isWall || isInHole ? normalize(q - dot(q, up) * up) : up;
  return RingHit(t, dot(n, d) > 0.0 ? -n : n);
}
