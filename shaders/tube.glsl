// Both distances at which a local ray crosses a tube about z with flat ends; x > y when it passes by.
vec2 crossTube(float radius, float halfLength, vec3 o, vec3 d) {
  float across = max(dot(d.xy, d.xy), 1e-12);
  float b = dot(o.xy, d.xy) / across;
  vec2 off = o.xy - b * d.xy;
  float disc = radius * radius - dot(off, off);
  if (disc <= 0.0) return vec2(1.0, -1.0);
  float root = sqrt(disc / across);
  float along = abs(d.z) < 1e-9 ? 1e-9 : d.z;
  float middle = -o.z / along;
  float half_ = halfLength / abs(along);
  return vec2(max(-b - root, middle - half_), min(-b + root, middle + half_));
}
