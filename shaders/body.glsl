// The piece: the unit ball cut by half-spaces, so it is convex and the next surface inside is simply the nearest one.
//
// No ray offsets: a ray that has been turned inwards at a plane runs away from it (d.n < 0), so that plane drops out of
// the search by itself, however the point was rounded; on the sphere the farther root of the chord is taken. Rounding
// may leave a point a hair beyond another plane; its distance then comes out slightly negative and the ray turns there at once.

// Set from outside: CAPS, 1 where only the planes are asked whose caps hold the place where a ray's line leaves the ball (see
// caps.glsl). Else all are, in whole groups, GROUP each, filled up with planes that no ray meets. BLOCK_PLANES, how many a uniform
// block holds, and MANY_PLANES, 1 where there are more: then they come in a texture.
#define EACH_PLANE for (int first = 0; first < planeCount; first += GROUP) for (int i = first; i < first + GROUP; i++)
#if CAPS
#include "caps.glsl"
#define PLANES_ABOUT(place, caps) ivec2 caps = capsAt(place); for (int i = caps.x; i < caps.y; i++)
#else
#define PLANES_ABOUT(place, caps) EACH_PLANE
#endif
// The natural skin, as a surface beside the planes 0 .. planeCount - 1; and no surface at all.
const int SKIN = -1;
const int NOTHING = -2;

#if CAPS
// A plane's number is its place among the texels; x: the GGX roughness of its finish, as far below the planes as these are high.
vec4 planeAt(int i) {
  return texelAt(i);
}
float planeRoughness(int i) {
  return texelFetch(planes, ivec2(i & (ROW_TEXELS - 1), i / ROW_TEXELS + textureSize(planes, 0).y / 2), 0).x;
}
#elif MANY_PLANES
// Two rows, one texel a plane: its unit outward normal and distance from the centre; x: the GGX roughness of its finish.
uniform sampler2D planes;
vec4 planeAt(int i) {
  return texelFetch(planes, ivec2(i, 0), 0);
}
float planeRoughness(int i) {
  return texelFetch(planes, ivec2(i, 1), 0).x;
}
#else
layout(std140) uniform Body {
  // Unit outward normal and distance from the centre.
  vec4 planes[BLOCK_PLANES];
  // x: GGX roughness of the plane's finish, 0 = smooth.
  vec4 finishes[BLOCK_PLANES];
};
vec4 planeAt(int i) {
  return planes[i];
}
float planeRoughness(int i) {
  return finishes[i].x;
}
#endif
// Planes, counted in whole groups.
uniform int planeCount;

struct Surface {
  float t;
  int id;
  // Outward.
  vec3 n;
};

// Where a ray from outside first meets the piece; id = NOTHING when it passes by. A start that touches the piece, as on a table
// that a facet rests on, may lie a hair within.
Surface enterBody(vec3 o, vec3 d) {
  float b = dot(o, d);
  // Squared distance of the ray's line from the centre, free of cancellation for far eyes.
  vec3 off = cross(o, d);
  float disc = 1.0 - dot(off, off);
  if (disc <= 0.0) return Surface(0.0, NOTHING, vec3(0.0));
  float enter = -b - sqrt(disc);
  float leave = -b + sqrt(disc);
  int id = SKIN;
#if CAPS
  PLANES_ABOUT(o + leave * d, before) {
    vec4 plane = planeAt(i);
    float along = dot(plane.xyz, d);
    if (along > 0.0) leave = min(leave, (plane.w - dot(plane.xyz, o)) / along);
  }
#endif
  PLANES_ABOUT(o + enter * d, behind) {
    vec4 plane = planeAt(i);
    float along = dot(plane.xyz, d);
    float t = (plane.w - dot(plane.xyz, o)) / along;
    if (along < 0.0) {
      if (t > enter) {
        enter = t;
        id = i;
      }
    } else if (along > 0.0 && t < leave) {
      leave = t;
    }
  }
  if (enter >= leave || leave <= 0.0) return Surface(0.0, NOTHING, vec3(0.0));
  enter = max(enter, 0.0);
  return Surface(enter, id, id == SKIN ? normalize(o + enter * d) : planeAt(id).xyz);
}

// Where a ray from inside, or from the surface inwards, meets the boundary: always somewhere.
Surface leaveBody(vec3 o, vec3 d) {
  float b = dot(o, d);
  float leave = -b + sqrt(max(0.0, b * b - dot(o, o) + 1.0));
  int id = SKIN;
  PLANES_ABOUT(o + leave * d, ahead) {
    vec4 plane = planeAt(i);
    float along = dot(plane.xyz, d);
    float t = (plane.w - dot(plane.xyz, o)) / along;
    if (along > 0.0 && t < leave) {
      leave = t;
      id = i;
    }
  }
  float t = max(leave, 0.0);
  return Surface(t, id, id == SKIN ? normalize(o + t * d) : planeAt(id).xyz);
}

float roughnessOf(int id) {
  return id < 0 ? 0.0 : planeRoughness(id);
}
