// The only shadow on the page: soft, under the glass, with the light that the glass gathers in its middle.
precision highp float;
varying vec2 vUv;
uniform vec3 shadowColor;
uniform vec3 glintColor;
uniform float strength;

void main() {
  vec2 at = (vUv - 0.5) * 2.0;
  float away = length(at);
  float dark = strength * pow(max(1.0 - away, 0.0), 1.8);
  float glint = 0.55 * exp(-dot(at - vec2(0.18, -0.05), at - vec2(0.18, -0.05)) * 26.0);
  gl_FragColor = vec4(mix(shadowColor, glintColor, glint), dark);
  #include <colorspace_fragment>
}
