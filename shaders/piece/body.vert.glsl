// The cut piece: its facets, or the whole ball for its skin. Positions on the unit ball; `face` is the facet's place in the plan, or below zero for round skin.
attribute float face;
varying vec3 vAt;
varying vec3 vNormal;
varying float vFace;

void main() {
  vAt = position;
  vNormal = normal;
  vFace = face;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
}
