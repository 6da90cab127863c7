// A small black ring that the piece lies on, its foot on the table: whether it stands in a way. Twin: src/core/optics/ring.ts.

// Radii of the tube's inner and outer wall, and how high it is.
const float RING_INNER = 0.44;
const float RING_OUTER = 0.52;
const float RING_HIGH = 0.2;
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

// Whether the ring whose foot lies so high along unit `up` stands in the way from p along unit d, nearer than tMax.
bool meetsRing(vec3 up, float foothold, vec3 p, vec3 d, float tMax) {
  float height = dot(p, up) - foothold;
  float rise = dot(d, up);
  vec2 way = vec2(0.0, tMax);
  if (rise == 0.0) {
    if (height <= 0.0 || height >= RING_HIGH) return false;
  } else {
    float foot = -height / rise;
    float rim = (RING_HIGH - height) / rise;
    way = vec2(max(way.x, min(foot, rim)), min(way.y, max(foot, rim)));
  }
  vec3 aside = cross(up, p);
  vec3 ahead = cross(up, d);
  float a = dot(ahead, ahead);
  float b = dot(aside, ahead);
  float square = dot(aside, aside);
  vec2 outer = withinCylinder(a, b, square - RING_OUTER * RING_OUTER);
  way = vec2(max(way.x, outer.x), min(way.y, outer.y));
  if (way.x >= way.y) return false;
  // All of that way may lie in the hole.
  vec2 hole = withinCylinder(a, b, square - RING_INNER * RING_INNER);
  return hole.x > hole.y || way.x < hole.x || way.y > hole.y;
}
