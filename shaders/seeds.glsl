// Seeds: tiny bubbles all through the glass. Twin: src/core/optics/seeds.ts.
// Set from outside: SEEDS, 1 where there are some; then CAPS of body.glsl is 0, since all planes are asked whether they open one.

// Radius, edge of the cubes with one seed each.
uniform vec2 seedSize;
uniform uint seedOfSeeds;

struct SeedHit {
  // Below 0 where none is met.
  float t;
  vec3 centre;
};

// One that the skin or a facet opens is not there.
bool liesWhole(vec3 g, float r) {
  if (dot(g, g) > (1.0 - r) * (1.0 - r)) return false;
  EACH_PLANE {
    vec4 plane = planeAt(i);
    if (dot(plane.xyz, g) > plane.w - r) return false;
  }
  return true;
}

// The first seed that a ray in the glass comes to; one that it leaves or stands in is none.
SeedHit nextSeed(vec3 o, vec3 d, float tMax) {
  float r = seedSize.x;
  float cell = seedSize.y;
  ivec3 cube = ivec3(floor(o / cell));
  // Distance along the ray at which it next leaves its cube along each axis, and between such walls.
  vec3 along = max(abs(d), vec3(1e-9));
  ivec3 forward = ivec3(d.x > 0.0 ? 1 : -1, d.y > 0.0 ? 1 : -1, d.z > 0.0 ? 1 : -1);
  vec3 wall = (vec3(cube + max(forward, ivec3(0))) * cell - o) * vec3(forward) / along;
  vec3 between = cell / along;
  for (int step_ = 0; step_ < MOST_CUBES; step_++) {
    vec3 g = grainCentre(r, cell, seedOfSeeds, cube);
    vec3 q = o - g;
    float b = dot(q, d);
    vec3 off = q - b * d;
    float square = r * r - dot(off, off);
    if (b < 0.0 && square > 0.0) {
      float t = -b - sqrt(square);
      if (t >= 0.0 && t < tMax && liesWhole(g, r)) return SeedHit(t, g);
    }
    bool isX = wall.x < wall.y && wall.x < wall.z;
    bool isY = !isX && wall.y < wall.z;
    ivec3 axis = isX ? ivec3(1, 0, 0) : isY ? ivec3(0, 1, 0) : ivec3(0, 0, 1);
    if (dot(wall, vec3(axis)) >= tMax) break;
    cube += axis * forward;
    wall += vec3(axis) * between;
  }
  return SeedHit(-1.0, vec3(0.0));
}
