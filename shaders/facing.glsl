// A normal that sways or is turned, where a ray may go by it. Twin: src/core/optics/facing.ts.

// The turned normal for a ray along d, or the surface's own `n` where the ray runs so flat that the turned face would look away from
// it or would throw it through the surface.
vec3 facing(vec3 turned, vec3 n, vec3 d) {
  float towards = dot(d, n);
  float onTurned = dot(d, turned);
  float back = towards - 2.0 * onTurned * dot(turned, n);
  return onTurned * towards > 0.0 && back * towards < 0.0 ? turned : n;
}
