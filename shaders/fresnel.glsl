// What happens to light at a smooth boundary between two clear media. Unit vectors: `d` runs with the light, `n` stands
// against it (cosI = -dot(d, n) >= 0), `eta` = index left / index entered. Twin: src/core/optics/fresnel.ts.

// Keeps a grazing ray from having no reflectance at all.
const float LEAST_COSINE = 1e-7;

// Cosine of the refracted angle (Snell), 0 under total internal reflection.
float cosRefracted(float cosI, float eta) {
  return sqrt(max(0.0, 1.0 - eta * eta * (1.0 - cosI * cosI)));
}

// Reflectance for unpolarised light (Born and Wolf, Principles of Optics, 1.5.2); 1 where cosT is 0. Asks that cosI is not 0.
float fresnelOf(float cosI, float cosT, float eta) {
  float s = (eta * cosI - cosT) / (eta * cosI + cosT);
  float p = (cosI - eta * cosT) / (cosI + eta * cosT);
  return 0.5 * (s * s + p * p);
}

float fresnel(float cosI, float eta) {
  float c = max(LEAST_COSINE, cosI);
  return fresnelOf(c, cosRefracted(c, eta), eta);
}

vec3 reflectRay(vec3 d, vec3 n, float cosI) {
  return d + 2.0 * cosI * n;
}

// The way on into the other medium; under total internal reflection it means nothing.
vec3 refracted(vec3 d, vec3 n, float cosI, float cosT, float eta) {
  return eta * d + (eta * cosI - cosT) * n;
}

vec3 refractRay(vec3 d, vec3 n, float cosI, float eta) {
  return refracted(d, n, cosI, cosRefracted(cosI, eta), eta);
}
