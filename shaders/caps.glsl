// Which planes cut away a place of the unit ball. Twin: src/core/measure/caps.ts. Set from outside: FIELDS.

// The field that a direction lies in, of an octahedron folded flat.
int fieldAt(vec3 d) {
  float middle = 0.5 * float(FIELDS);
  vec2 at = d.xy * (middle / (abs(d.x) + abs(d.y) + abs(d.z))) + middle;
  ivec2 place = min(ivec2(at), FIELDS - 1);
  return (d.z < 0.0 ? FIELDS * FIELDS : 0) + place.y * FIELDS + place.x;
}
