// The waviness of a fire-polished skin. Twin: src/core/optics/waviness.ts.
//
// Set from outside: WAVES, how many waves there are.

#include "facing.glsl"

// Radians per unit length along x, y, z, and the phase.
uniform vec4 waves[WAVES];
// Greatest slope of one wave.
uniform float waveSlope;

// Outward normal of the wavy skin at p, a point of the ball.
vec3 wavyNormal(vec3 p) {
  vec3 steepest = vec3(0.0);
  for (int k = 0; k < WAVES; k++)
    steepest += cos(dot(waves[k].xyz, p) + waves[k].w) * normalize(waves[k].xyz);
  return normalize(p - waveSlope * (steepest - dot(steepest, p) * p));
}

// The wavy normal for a ray along d, or the ball's own `n`, see facing.glsl.
vec3 facingNormal(vec3 p, vec3 n, vec3 d) {
  return facing(wavyNormal(p), n, d);
}
