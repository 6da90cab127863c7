// Matte bodies in soft light from the window, seen from both sides.
precision highp float;
varying vec3 vNormal;
uniform vec3 color;

void main() {
  vec3 normal = gl_FrontFacing ? vNormal : -vNormal;
  float light = 0.6 + 0.4 * dot(normalize(normal), normalize(vec3(-0.5, 0.7, 0.6)));
  gl_FragColor = vec4(color * light, 1.0);
  #include <colorspace_fragment>
}
