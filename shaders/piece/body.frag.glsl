// Glass as a drawing: true refraction at the surface, along straight paths through the convex body to the nearest plane or the
// ball, mirrored inside where light can't leave, then the light of the tracer. No spectrum, no accumulation: one clean picture a
// frame. Before this text go fresnel.glsl, light.glsl, tone.glsl and caps.glsl.
precision highp float;
precision highp int;

varying vec3 vAt;
varying vec3 vNormal;
varying float vFace;

// Index of the glass.
uniform float eta;
uniform vec3 eye;
// Unit direction of the view, and whether the page is seen in the half-space ahead of it (as in path.glsl).
uniform vec3 away;
uniform bool showsPage;
// From the piece's axes to those in which its light stands.
uniform mat3 toRoom;
uniform vec3 groundColor;
// What radiance is multiplied by before it is shown.
uniform float exposure;
uniform vec3 skinColor;
uniform vec3 glassColor;
// Absorption per radius of the glass's tint for red, green and blue, and what each layer beneath adds to it (w: its radius).
uniform vec3 tint;
uniform vec4 casings[MAX_CASINGS];
uniform int casingCount;
uniform vec3 glow;
uniform float hoveredFace;
uniform float selectedFace;
uniform float bodyAlpha;
// Paths inside are followed over this many segments, at most MOST_SEGMENTS.
uniform int segments;

const int MOST_SEGMENTS = 3;

// Nearest way out of the convex body: distance in x-coordinate of the result's w, outward normal in xyz. A plane of normal `skip`
// was just left. Only a plane whose cap holds the place where the ball would be left comes before it.
vec4 wayOut(vec3 from, vec3 along, vec3 skip) {
  float b = dot(from, along);
  float far = -b + sqrt(max(b * b - dot(from, from) + 1.0, 0.0));
  vec3 normal = from + far * along;
  ivec2 caps = capsAt(normal);
  for (int i = caps.x; i < caps.y; i++) {
    vec4 plane = texelAt(i);
    float toward = dot(plane.xyz, along);
    if (toward <= 0.0 || plane.xyz == skip) continue;
    float t = (plane.w - dot(plane.xyz, from)) / toward;
    if (t < far) {
      far = t;
      normal = plane.xyz;
    }
  }
  return vec4(normal, max(far, 0.0));
}

// Share of red, green and blue that the glass's colour lets through along a stretch (as in casing.glsl).
vec3 throughTint(vec3 from, vec3 along, float far) {
  vec3 taken = tint * far;
  float b = dot(from, along);
  vec3 off = cross(from, along);
  for (int i = 0; i < MAX_CASINGS; i++) {
    if (i >= casingCount) break;
    float square = casings[i].w * casings[i].w - dot(off, off);
    if (square <= 0.0) continue;
    float rim = sqrt(square);
    taken += casings[i].rgb * max(0.0, min(far, rim - b) - max(0.0, -rim - b));
  }
  return exp(-taken);
}

// Whether a point of the ball has been ground off.
bool isGroundOff(vec3 at) {
  ivec2 caps = capsAt(at);
  for (int i = caps.x; i < caps.y; i++) {
    vec4 plane = texelAt(i);
    if (dot(plane.xyz, at) > plane.w) return true;
  }
  return false;
}

// Light from a direction at a place: radiance, and in w how much of it is the page behind the piece instead.
vec4 seenToward(vec3 p, vec3 d) {
  return showsPage && dot(d, away) > 0.0 ? vec4(0.0, 0.0, 0.0, 1.0) : vec4(lightFrom(toRoom * p, toRoom * d), 0.0);
}

void main() {
  // The skin's triangles are those of the whole ball, which they leave by a hair: the true point lies straight above.
  if (vFace < 0.0 && isGroundOff(normalize(vAt))) discard;
  int face = int(floor(vFace + 0.5));
  vec3 normal = normalize(vNormal);
  vec3 along = normalize(vAt - eye);
  float cosThetaI = clamp(-dot(along, normal), 0.0, 1.0);
  float mirrored = fresnel(cosThetaI, 1.0 / eta);
  // What the face itself throws back stands before anything inside.
  vec4 gleam = mirrored * seenToward(vAt, reflect(along, normal));

  // Into the glass, then from wall to wall until the light finds its way out.
  vec3 inside = refract(along, normal, 1.0 / eta);
  vec3 at = vAt;
  vec3 skip = face < 0 ? vec3(0.0) : normal;
  float path = 0.0;
  vec3 share = vec3(1.0 - mirrored);
  vec3 through = vec3(0.0);
  vec3 page = vec3(0.0);
  for (int i = 0; i < MOST_SEGMENTS; i++) {
    if (i >= segments) break;
    vec4 way = wayOut(at, inside, skip);
    share *= throughTint(at, inside, way.w);
    at += way.w * inside;
    path += way.w;
    float back = fresnel(clamp(dot(inside, way.xyz), 0.0, 1.0), eta);
    vec3 outside = refract(inside, -way.xyz, eta);
    // What is not followed further has been everywhere: the mean of the light all around stands for it (as in path.glsl).
    vec4 seen = back < 1.0 ? (1.0 - back) * seenToward(at, outside) : vec4(0.0);
    through += share * seen.rgb;
    page += share * seen.w;
    share *= back;
    if (i == segments - 1) through += share * lightAround;
    inside = reflect(inside, way.xyz);
    skip = way.xyz;
  }
  vec3 clear = pow(glassColor, vec3(path));
  vec3 light = toneNeutral(through * clear * exposure) + page * clear * groundColor;

  // Round skin is drawn a little satin, so that ground faces and skin are told apart without colour.
  if (face < 0) {
    light = mix(light, skinColor * (0.55 + 0.45 * dot(normal, -away)), 0.5);
  }
  int picked = int(selectedFace);
  int pointed = int(hoveredFace);
  float lit = face == picked ? 0.3 : face == pointed ? 0.16 : 0.0;
  if (face >= 0) light = mix(light, glow, lit);

  // Premultiplied: the gleam stays whole however much the body lets through.
  vec3 mirror = toneNeutral(gleam.rgb * exposure) + gleam.w * groundColor;
  vec3 whole = encodeSrgb(min(light + mirror, 1.0));
  vec3 shine = encodeSrgb(min(mirror, 1.0));
  gl_FragColor = vec4(whole * bodyAlpha + shine * (1.0 - bodyAlpha), bodyAlpha);
}
