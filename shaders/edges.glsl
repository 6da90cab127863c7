// Edges of polished glass: along the last hair before one the normal turns. Twin: src/core/optics/edges.ts, where the formula is told.

#include "facing.glsl"
#include "body.glsl"

// To which an edge is rounded.
uniform float edgeRadius;

// How much a neighbour's normal counts for one of the face's own, whose angle has this cosine, at a place so far below its plane.
float turnBy(float cosine, float below) {
  float near = min(1.0, 1.0 - below / max(1e-9, edgeRadius * (1.0 - cosine)));
  return near > 0.0 ? near / (2.0 - near) : 0.0;
}

// Outward normal at p of a surface met from outside along d; `n` is its own.
vec3 roundedNormal(int id, vec3 p, vec3 n, vec3 d) {
  vec3 sum = n;
  if (id != SKIN) {
    float r = length(p);
    sum += turnBy(dot(n, p) / r, 1.0 - r) * p / r;
  }
  PLANES_ABOUT(p, about) {
    vec4 plane = planeAt(i);
    float share = turnBy(dot(n, plane.xyz), plane.w - dot(plane.xyz, p));
    // one plane has several numbers where it is listed by fields
    if (plane.xyz != n) sum += share * plane.xyz;
  }
  return facing(normalize(sum), n, d);
}
