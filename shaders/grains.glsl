// Grains strewn in space that is cut into cubes, one in each. Twin: src/core/inside/hit-grains.ts.

#include "random.glsl"

// Cubes a ray may cross before it counts as having missed.
const int MOST_CUBES = 64;

// Number of the cube with whole coordinates: the name of its grain. Cubes lie within -512 .. 511 of the centre.
uint cubeNumber(ivec3 cube) {
  uvec3 c = uvec3(cube) & 1023u;
  return (c.x << 20) | (c.y << 10) | c.z;
}

// Centre of a cube's grain of radius r, wholly within its cube.
vec3 grainCentre(float r, float cell, uint seed, ivec3 cube) {
  uint h0 = hash(cubeNumber(cube) + hash(seed));
  uint h1 = hash(h0);
  uint h2 = hash(h1);
  return vec3(cube) * cell + r + (cell - 2.0 * r) * vec3(toUnit(h0), toUnit(h1), toUnit(h2));
}
