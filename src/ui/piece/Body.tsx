/** The glass body: exact facets and the skin between them, drawn with true refraction inside the convex solid. */
import { useEffect, useMemo } from "react";
import {
  BufferAttribute,
  BufferGeometry,
  Color,
  DataTexture,
  FloatType,
  Matrix3,
  NearestFilter,
  RGBAFormat,
  ShaderMaterial,
  Vector3,
  Vector4,
} from "three";
import fresnel from "../../../shaders/fresnel.glsl?raw";
import bodyFrag from "../../../shaders/piece/body.frag.glsl?raw";
import bodyVert from "../../../shaders/piece/body.vert.glsl?raw";
import room from "../../../shaders/piece/window.glsl?raw";
import type { Plane } from "../../core/geometry/plane.ts";
import type { Solid } from "../../core/geometry/solid-types.ts";
import { addedByChannel, bordersOf } from "../../core/optics/casing.ts";
import { indexAt, LINE_D_NM, opticalGlass } from "../../core/optics/glasses.ts";
import type { Piece } from "../../core/plan/document.ts";
import { COUNTS } from "../../core/plan/limits.ts";
import { type BodyArrays, ballGeometry, facetArrays } from "./body-geometry.ts";
import { requestFrame } from "./frames.ts";
import type { Palette } from "./token-colors.ts";

/** Room for more facets than a plan may have, and less than any device's widest texture. */
const MOST_PLANES = 1024;

const NO_FACE = -5;

function makeUniforms() {
  const planes = new DataTexture(new Float32Array(4 * MOST_PLANES), MOST_PLANES, 1, RGBAFormat, FloatType);
  planes.minFilter = NearestFilter;
  planes.magFilter = NearestFilter;
  return {
    planes: { value: planes },
    planeCount: { value: 0 },
    eta: { value: 1.5 },
    eye: { value: new Vector3() },
    toEye: { value: new Matrix3() },
    skinColor: { value: new Color() },
    glassColor: { value: new Color(0.95, 0.985, 0.974) },
    tint: { value: new Vector3() },
    casings: { value: Array.from({ length: COUNTS.cased }, () => new Vector4()) },
    casingCount: { value: 0 },
    glow: { value: new Color() },
    groundColor: { value: new Color() },
    roomColor: { value: new Color() },
    benchColor: { value: new Color() },
    windowColor: { value: new Color() },
    cardColor: { value: new Color() },
    hoveredFace: { value: NO_FACE },
    selectedFace: { value: NO_FACE },
    bodyAlpha: { value: 1 },
    segments: { value: 3 },
  };
}

const material = new ShaderMaterial({
  vertexShader: bodyVert,
  defines: { MAX_CASINGS: COUNTS.cased },
  fragmentShader: `precision highp float;\n${fresnel}\n${room}\n${bodyFrag}`,
  uniforms: makeUniforms(),
  transparent: true,
  premultipliedAlpha: true,
  polygonOffset: true,
  polygonOffsetFactor: 1,
  polygonOffsetUnits: 2,
});
export const bodyUniforms = material.uniforms as ReturnType<typeof makeUniforms>;

function setPlanes(planes: readonly Plane[]): void {
  const { planes: texture, planeCount } = bodyUniforms;
  const data = texture.value.image.data as Float32Array;
  const count = Math.min(planes.length, MOST_PLANES);
  for (let i = 0; i < count; i++) data.set([...planes[i].n, planes[i].h], 4 * i);
  texture.value.needsUpdate = true;
  planeCount.value = count;
}

function setGlass(piece: Piece): void {
  const { eta, tint, casings, casingCount } = bodyUniforms;
  const radiusMm = piece.diameterMm / 2;
  eta.value = indexAt(opticalGlass(piece.glass).dispersion, LINE_D_NM);
  tint.value.set(...addedByChannel(piece.tint, undefined, radiusMm));
  const borders = bordersOf(piece);
  borders.forEach(({ radius, tint: own, around }, i) => {
    casings.value[i].set(...addedByChannel(own, around, radiusMm), radius);
  });
  casingCount.value = borders.length;
}

function setPalette(palette: Palette): void {
  const { isDark } = palette;
  bodyUniforms.skinColor.value.copy(palette.skin);
  bodyUniforms.glow.value.copy(palette["ground-lit"]).lerp(palette.grip, 0.35);
  bodyUniforms.groundColor.value.copy(palette.ground);
  bodyUniforms.roomColor.value.copy(palette.line).multiplyScalar(isDark ? 0.55 : 0.62);
  bodyUniforms.benchColor.value.copy(palette.line).multiplyScalar(isDark ? 0.3 : 1.15);
  // A window is several times as bright as what it lights, so that even a faint mirror shows it.
  bodyUniforms.windowColor.value.setRGB(isDark ? 4.2 : 4, isDark ? 3.3 : 4.2, isDark ? 2.2 : 4.4);
  // By day the card stays under the page's own brightness, or its mirror image would eat the outline.
  bodyUniforms.cardColor.value.copy(palette["ground-lit"]).multiplyScalar(isDark ? 6 : 0.84);
}

function geometryOf({ positions, normals, faces }: BodyArrays): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(positions, 3));
  geometry.setAttribute("normal", new BufferAttribute(normals, 3));
  geometry.setAttribute("face", new BufferAttribute(faces, 1));
  return geometry;
}

export function Body({
  planes,
  solid,
  piece,
  palette,
  hovered,
  selected,
  alpha,
}: {
  planes: readonly Plane[];
  /** The ball cut by exactly these planes. */
  solid: Solid;
  piece: Piece;
  palette: Palette;
  hovered: number | null;
  selected: number | null;
  alpha: number;
}) {
  const facets = useMemo(() => geometryOf(facetArrays(solid.facets)), [solid]);
  const ball = useMemo(ballGeometry, []);
  useEffect(() => () => facets.dispose(), [facets]);
  useEffect(() => () => ball.dispose(), [ball]);
  useEffect(() => {
    setPlanes(planes);
    setGlass(piece);
    setPalette(palette);
    bodyUniforms.hoveredFace.value = hovered ?? NO_FACE;
    bodyUniforms.selectedFace.value = selected ?? NO_FACE;
    bodyUniforms.bodyAlpha.value = alpha;
    requestFrame();
  }, [planes, piece, palette, hovered, selected, alpha]);
  return [ball, facets].map((geometry) => (
    <mesh
      key={geometry === ball ? "skin" : "facets"}
      geometry={geometry}
      material={material}
      renderOrder={2}
      frustumCulled={false}
    />
  ));
}
