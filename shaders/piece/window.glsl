// What stands around the piece, in the eye's own frame (x right, y up, z toward the eye): a bench by a window.
// Soft walls that meet the page's ground, a window high on the left with its bars, a pale card on the right, a matte bench below.

uniform vec3 groundColor;
uniform vec3 wallColor;
uniform vec3 benchColor;
uniform vec3 windowColor;
uniform vec3 cardColor;

// 1 inside a box of half size `size` around `centre`, softened over `soft`.
float softBox(vec2 at, vec2 centre, vec2 size, float soft) {
  vec2 d = abs(at - centre) - size;
  return (1.0 - smoothstep(-soft, soft, d.x)) * (1.0 - smoothstep(-soft, soft, d.y));
}

vec3 roomToward(vec3 dir) {
  // Walls: the page's ground ahead and behind, a little darker overhead, the bench below.
  vec3 room = mix(groundColor, wallColor, smoothstep(-0.1, 0.9, dir.y));
  room = mix(room, benchColor, smoothstep(0.05, -0.75, dir.y));
  // The window hangs on the left wall, seen on the plane x = -1.
  if (dir.x < -0.15) {
    vec2 at = dir.yz / -dir.x;
    float pane = softBox(at, vec2(0.75, 0.35), vec2(0.62, 0.85), 0.05);
    float bars = softBox(vec2(at.x, 0.0), vec2(0.75, 0.0), vec2(0.035, 1.0), 0.02);
    bars = max(bars, softBox(vec2(at.y, 0.0), vec2(0.07, 0.0), vec2(0.035, 1.0), 0.02));
    bars = max(bars, softBox(vec2(at.y, 0.0), vec2(0.63, 0.0), vec2(0.035, 1.0), 0.02));
    room = mix(room, windowColor, pane * (1.0 - 0.85 * bars));
  }
  // A pale card on the right gives the shaded side its edge.
  if (dir.x > 0.2) {
    vec2 at = dir.yz / dir.x;
    room = mix(room, cardColor, 0.75 * softBox(at, vec2(0.1, -0.2), vec2(0.7, 0.45), 0.3));
  }
  return room;
}
