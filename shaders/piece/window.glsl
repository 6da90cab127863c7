// What stands around the piece, in the eye's own frame (x right, y up, z toward the eye): a bench by a window.
// Behind the piece the page's own bright ground, at the sides and behind the eye the darker room that gives glass its edges,
// a window high on the left with its bars, a pale card on the right, the matte bench below.

uniform vec3 groundColor;
uniform vec3 roomColor;
uniform vec3 benchColor;
uniform vec3 windowColor;
uniform vec3 cardColor;

// 1 inside a box of half size `size` around `centre`, softened over `soft`.
float softBox(vec2 at, vec2 centre, vec2 size, float soft) {
  vec2 d = abs(at - centre) - size;
  return (1.0 - smoothstep(-soft, soft, d.x)) * (1.0 - smoothstep(-soft, soft, d.y));
}

vec3 roomToward(vec3 dir) {
  // Ahead, behind the piece, the page; it falls off to the sides.
  vec3 room = mix(groundColor, roomColor, smoothstep(-0.97, -0.1, dir.z));
  room = mix(room, benchColor, 0.9 * smoothstep(-0.08, -0.7, dir.y));
  // A pale ceiling.
  room = mix(room, cardColor, 0.6 * smoothstep(0.55, 0.95, dir.y));
  // The window hangs on the left wall, seen on the plane x = -1.
  if (dir.x < -0.12) {
    vec2 at = dir.yz / -dir.x;
    float pane = softBox(at, vec2(0.62, 0.3), vec2(0.6, 1.0), 0.05);
    float bars = softBox(vec2(at.x, 0.0), vec2(0.62, 0.0), vec2(0.035, 1.0), 0.02);
    bars = max(bars, softBox(vec2(at.y, 0.0), vec2(-0.03, 0.0), vec2(0.035, 1.0), 0.02));
    bars = max(bars, softBox(vec2(at.y, 0.0), vec2(0.63, 0.0), vec2(0.035, 1.0), 0.02));
    room = mix(room, windowColor, pane * (1.0 - 0.8 * bars));
  }
  // A pale card on the right gives the shaded side its edge.
  if (dir.x > 0.25) {
    vec2 at = dir.yz / dir.x;
    room = mix(room, cardColor, 0.8 * softBox(at, vec2(0.15, 0.1), vec2(0.55, 0.35), 0.2));
  }
  return room;
}
