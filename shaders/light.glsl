// Where the light comes from: radiance by direction (and place, where something glows near by), linear sRGB, +y up but where `lightUp` says otherwise. Twin: src/core/optics/lights.ts and equirect.ts.
//
// Set from outside: LIGHT (LIGHT_UNIFORM, LIGHT_SETTING or LIGHT_PICTURE), PANELS (those of a setting, at most MAX_PANELS), NEAR_PANELS (how
// many of these, the last ones, are near by).

#define LIGHT_UNIFORM 0
#define LIGHT_SETTING 1
#define LIGHT_PICTURE 2
const int PANEL_TEXELS = 6;
// Width of the blurred horizon line, as d.y.
const float HORIZON_BLUR = 0.015;
const float PI = 3.141592653589793;

// Where a setting's own up is.
uniform vec3 lightUp;

#if LIGHT == LIGHT_SETTING
// A setting: zenith, horizon, floor, nadir; how quickly the horizon's colour gives way.
uniform vec4 skyColours[4];
uniform float skySpread;
// Glowing panels, already turned with the light. Each: (towards, round), (right / half width, 1 / soft), (up / half height,
// 5 / bar), (columns, rows, 1 / distance or 0), colour at the upper edge, colour at the lower edge.
uniform vec4 panels[MAX_PANELS * PANEL_TEXELS];

// Hermite between 0 and 1, flat beyond.
float eased(float t) {
  t = clamp(t, 0.0, 1.0);
  return t * t * (3.0 - 2.0 * t);
}

// 1 on the glass of a divided window, 0 on its bars; `s` runs from 0 to 1 across all `panes`. `sharpness` = 5 / bar.
float paneMask(float s, float panes, float sharpness) {
  float nearest = floor(s * panes + 0.5);
  bool isInner = nearest > 0.5 && nearest < panes - 0.5;
  return isInner ? eased(abs(s * panes - nearest) * sharpness - 2.0) : 1.0;
}

// How much panel `i` covers at a place of its plane, -1 .. 1 from edge to edge, and what it glows with there.
float coverOf(int i, vec2 at, out vec3 glow) {
  vec4 towards = panels[i * PANEL_TEXELS];
  vec4 right = panels[i * PANEL_TEXELS + 1];
  vec4 up = panels[i * PANEL_TEXELS + 2];
  glow = vec3(0.0);
  float reach = towards.w > 0.5 ? length(at) : max(abs(at.x), abs(at.y));
  if (reach >= 1.0) return 0.0;
  vec4 panes = panels[i * PANEL_TEXELS + 3];
  vec2 share = 0.5 * at + 0.5;
  float cover = eased((1.0 - reach) * right.w);
  cover *= paneMask(share.x, panes.x, up.w) * paneMask(share.y, panes.y, up.w);
  glow = mix(panels[i * PANEL_TEXELS + 5].rgb, panels[i * PANEL_TEXELS + 4].rgb, share.y);
  return cover;
}

// What is seen past panel `i`, or the panel's own glow.
vec3 overPanel(vec3 past, vec3 d, int i) {
  float ahead = dot(d, panels[i * PANEL_TEXELS].xyz);
  if (ahead <= 0.0) return past;
  vec2 at = vec2(dot(d, panels[i * PANEL_TEXELS + 1].xyz), dot(d, panels[i * PANEL_TEXELS + 2].xyz)) / ahead;
  vec3 glow;
  float cover = coverOf(i, at, glow);
  return mix(past, glow, cover);
}

#if NEAR_PANELS > 0
// What panel `i`, which is near by, sends to p; it glows towards the piece only.
vec3 fromPanel(vec3 p, vec3 d, int i) {
  vec3 towards = panels[i * PANEL_TEXELS].xyz;
  vec3 right = panels[i * PANEL_TEXELS + 1].xyz;
  vec3 up = panels[i * PANEL_TEXELS + 2].xyz;
  vec3 place = panels[i * PANEL_TEXELS + 3].z * p;
  float ahead = dot(d, towards);
  float before = 1.0 - dot(place, towards);
  if (ahead <= 0.0 || before <= 0.0) return vec3(0.0);
  vec3 glow;
  float cover = coverOf(i, vec2(dot(place, right), dot(place, up)) + before / ahead * vec2(dot(d, right), dot(d, up)), glow);
  return cover * glow;
}
#endif

vec3 lightFrom(vec3 p, vec3 d) {
  float height = dot(d, lightUp);
  float t = pow(max(abs(height), 1e-12), skySpread);
  vec3 below = mix(skyColours[2].rgb, skyColours[3].rgb, t);
  vec3 above = mix(skyColours[1].rgb, skyColours[0].rgb, t);
  vec3 rgb = mix(below, above, smoothstep(-HORIZON_BLUR, HORIZON_BLUR, height));
  // One by one and not in a loop: a panel whose place is known when compiling needs no search for its numbers, and those that
  // are not there are not compiled.
#if NEAR_PANELS > 0
#define PANEL(i) if (i < PANELS - NEAR_PANELS) rgb = overPanel(rgb, d, i); else if (i < PANELS) rgb += fromPanel(p, d, i);
#else
#define PANEL(i) if (i < PANELS) rgb = overPanel(rgb, d, i);
#endif
  PANEL(0) PANEL(1) PANEL(2) PANEL(3) PANEL(4) PANEL(5) PANEL(6) PANEL(7)
  return rgb;
}

#elif LIGHT == LIGHT_PICTURE
// A picture all around (rows from the top) and by how much it is turned, as (cos, sin).
uniform sampler2D environment;
uniform vec2 lightTurn;

// Bilinear between pixel centres, joined at the seam, held at the poles.
vec3 lightFrom(vec3 p, vec3 towards) {
  vec3 d = vec3(
    lightTurn.x * towards.x - lightTurn.y * towards.z,
    towards.y,
    lightTurn.y * towards.x + lightTurn.x * towards.z
  );
  ivec2 size = textureSize(environment, 0);
  vec2 at = vec2(0.5 + atan(d.z, d.x) / (2.0 * PI), 0.5 - asin(clamp(d.y, -1.0, 1.0)) / PI) * vec2(size) - 0.5;
  vec2 low = floor(at);
  vec2 f = at - low;
  int left = (int(low.x) + size.x) % size.x;
  int right = (left + 1) % size.x;
  int top = clamp(int(low.y), 0, size.y - 1);
  int bottom = clamp(int(low.y) + 1, 0, size.y - 1);
  vec3 upper = mix(texelFetch(environment, ivec2(left, top), 0).rgb, texelFetch(environment, ivec2(right, top), 0).rgb, f.x);
  vec3 lower = mix(texelFetch(environment, ivec2(left, bottom), 0).rgb, texelFetch(environment, ivec2(right, bottom), 0).rgb, f.x);
  return mix(upper, lower, f.y);
}

#else
vec3 lightFrom(vec3 p, vec3 d) {
  return vec3(1.0);
}
#endif

// Mean radiance from all around.
uniform vec3 lightAround;

// A backdrop in the light's own colours without its shapes: what comes from above, level and below, run into each other.
uniform vec3 softBands[3];

vec3 softFrom(vec3 d) {
  float height = dot(d, lightUp);
  return mix(softBands[1], height > 0.0 ? softBands[0] : softBands[2], smoothstep(0.0, 0.9, abs(height)));
}
