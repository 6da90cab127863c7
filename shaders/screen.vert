#version 300 es
// One triangle that covers the target; its corners come from the vertex number, so there is nothing to bind.
precision highp float;

void main() {
  vec2 corner = vec2(gl_VertexID == 1 ? 3.0 : -1.0, gl_VertexID == 2 ? 3.0 : -1.0);
  gl_Position = vec4(corner, 0.0, 1.0);
}
