#version 300 es
// The yardstick: the plainest tracer of a faceted glass ball that still does the job. PLANES planes (set from outside), 12 bounces inside, one
// refractive index for all light, smooth surfaces, a two-tone sky with one window. No records, no roulette, no finish.
precision highp float;

const int BOUNCES = 12;
const float N = 1.473;

uniform vec4 planes[PLANES];
uniform vec3 eye;
uniform mat3 view;
uniform vec2 resolution;
uniform uint frameIndex;

out vec4 sum;

uint hash(uint x) {
  x ^= x >> 16;
  x *= 0x7feb352du;
  x ^= x >> 15;
  x *= 0x846ca68bu;
  return x ^ (x >> 16);
}

vec3 sky(vec3 d) {
  vec3 tone = mix(vec3(0.25, 0.22, 0.2), vec3(0.7, 0.8, 0.95), smoothstep(-0.3, 0.6, d.y));
  float window = smoothstep(0.9, 0.94, dot(d, normalize(vec3(-0.5, 0.6, 0.62))));
  return tone + 8.0 * window;
}

float fresnel(float cosI, float eta) {
  float sin2T = eta * eta * (1.0 - cosI * cosI);
  if (sin2T >= 1.0) return 1.0;
  float cosT = sqrt(1.0 - sin2T);
  float rs = (eta * cosI - cosT) / (eta * cosI + cosT);
  float rp = (cosI - eta * cosT) / (cosI + eta * cosT);
  return 0.5 * (rs * rs + rp * rp);
}

void main() {
  uint seed = hash(uint(gl_FragCoord.x) + 8192u * uint(gl_FragCoord.y));
  vec2 jitter = fract(vec2(seed & 0xffffu, seed >> 16) / 65536.0 + float(frameIndex) * vec2(0.75487767, 0.56984029));
  vec2 at = (2.0 * (floor(gl_FragCoord.xy) + jitter) - resolution) / resolution.y;
  vec3 d = normalize(view * vec3(at, -1.0));
  vec3 o = eye;

  float b = dot(o, d);
  float disc = b * b - dot(o, o) + 1.0;
  vec3 color = sky(d);
  if (disc > 0.0) {
    float enter = -b - sqrt(disc);
    float leave = -b + sqrt(disc);
    vec3 n = o + enter * d;
    for (int i = 0; i < PLANES; i++) {
      float nd = dot(planes[i].xyz, d);
      float t = (planes[i].w - dot(planes[i].xyz, o)) / nd;
      if (nd < 0.0) {
        if (t > enter) { enter = t; n = planes[i].xyz; }
      } else leave = min(leave, t);
    }
    if (enter < leave) {
      float f = fresnel(-dot(d, n), 1.0 / N);
      color = f * sky(reflect(d, n));
      o += enter * d;
      d = refract(d, n, 1.0 / N);
      float weight = 1.0 - f;
      for (int bounce = 0; bounce < BOUNCES; bounce++) {
        b = dot(o, d);
        float t = -b + sqrt(max(0.0, b * b - dot(o, o) + 1.0));
        n = o + t * d;
        for (int i = 0; i < PLANES; i++) {
          float nd = dot(planes[i].xyz, d);
          float s = (planes[i].w - dot(planes[i].xyz, o)) / nd;
          if (nd > 1e-6 && s < t) { t = s; n = planes[i].xyz; }
        }
        o += t * d;
        f = fresnel(dot(d, n), N);
        if (f < 1.0) color += weight * (1.0 - f) * sky(refract(d, -n, N));
        weight *= f;
        if (weight < 0.002) break;
        d = reflect(d, n);
      }
    }
  }
  sum = vec4(color, 1.0);
}
