// Which planes cut away a place of the unit ball. Twin: src/core/measure/caps.ts. Set from outside: FIELDS, and ROW_TEXELS, texels
// in a row.

// Planes by the field of the ball that they may reach: src/render/plane-texels.ts.
uniform sampler2D planes;

vec4 texelAt(int i) {
  return texelFetch(planes, ivec2(i & (ROW_TEXELS - 1), i / ROW_TEXELS), 0);
}

// The field that a direction lies in, of an octahedron folded flat.
int fieldAt(vec3 d) {
  float middle = 0.5 * float(FIELDS);
  vec2 at = d.xy * (middle / (abs(d.x) + abs(d.y) + abs(d.z))) + middle;
  ivec2 place = min(ivec2(at), FIELDS - 1);
  return (d.z < 0.0 ? FIELDS * FIELDS : 0) + place.y * FIELDS + place.x;
}

// Where the planes that may cut away a place of the ball stand among the texels: the first, and the one after the last.
ivec2 capsAt(vec3 place) {
  return ivec2(texelAt(fieldAt(place)).xy);
}
