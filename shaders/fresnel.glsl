// What happens to light at a smooth boundary between two clear media. Unit vectors: `d` runs with the light, `n` stands
// against it (cosI = -dot(d, n) >= 0), `eta` = index left / index entered. Twin: src/core/optics/fresnel.ts.

// Squared cosine of the refracted angle, negative under total internal reflection (Snell).
float cos2Refracted(float cosI, float eta) {
  return 1.0 - eta * eta * (1.0 - cosI * cosI);
}

// Reflectance for unpolarised light, 1 under total internal reflection (Born and Wolf, Principles of Optics, 1.5.2).
float fresnel(float cosI, float eta) {
  float cos2T = cos2Refracted(cosI, eta);
  if (cos2T <= 0.0) return 1.0;
  float cosT = sqrt(cos2T);
  float s = (eta * cosI - cosT) / (eta * cosI + cosT);
  float p = (cosI - eta * cosT) / (cosI + eta * cosT);
  return 0.5 * (s * s + p * p);
}

vec3 reflectRay(vec3 d, vec3 n, float cosI) {
  return d + 2.0 * cosI * n;
}

// Asks that the ray is not totally reflected; at the critical angle it runs along the surface.
vec3 refractRay(vec3 d, vec3 n, float cosI, float eta) {
  return eta * d + (eta * cosI - sqrt(max(0.0, cos2Refracted(cosI, eta)))) * n;
}
