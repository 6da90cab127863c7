// Layers of glass of another colour: concentric balls that share one index, so that only absorption tells them.
// Twin: src/core/optics/casing.ts.
//
// Set from outside: CASINGS, how many there are, from the outermost in.

// What each adds to the absorption of the glass around it, for red, green and blue per radius; w: its own radius. For a path at
// one wavelength the same stands in a fourth row of the spectrum, a layer a number.
uniform vec4 casings[CASINGS];

#if CHANNELS == 1
Amount casingSigma(int i, PathColour colour) {
  return colour.casings[i];
}
#else
Amount casingSigma(int i, PathColour colour) {
  return casings[i].rgb;
}
#endif

// Length of the part of a ray (o, unit d), within 0 .. tMax, that runs within `radius` of the centre.
float lengthWithinBall(float radius, vec3 o, vec3 d, float tMax) {
  float b = dot(o, d);
  vec3 off = cross(o, d);
  float square = radius * radius - dot(off, off);
  if (square <= 0.0) return 0.0;
  float rim = sqrt(square);
  return max(0.0, min(tMax, rim - b) - max(0.0, -rim - b));
}

// What a stretch of glass takes beyond what its outermost layer would, as an exponent.
Amount takenByCasings(vec3 o, vec3 d, float tMax, PathColour colour) {
  Amount taken = Amount(0.0);
  for (int i = 0; i < CASINGS; i++) taken += casingSigma(i, colour) * lengthWithinBall(casings[i].w, o, d, tMax);
  return taken;
}
