/** The glass body: the cut mesh, drawn with one bounce of true refraction inside the convex solid. */
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
} from "three";
import bodyFrag from "../../../shaders/piece/body.frag.glsl?raw";
import bodyVert from "../../../shaders/piece/body.vert.glsl?raw";
import room from "../../../shaders/piece/window.glsl?raw";
import type { Plane } from "../../core/geometry/plane.ts";
import { indexAt, LINE_D_NM, opticalGlass } from "../../core/optics/glasses.ts";
import type { Piece } from "../../core/plan/document.ts";
import { bodyArrays } from "./body-geometry.ts";
import { requestFrame } from "./frames.ts";
import type { Palette } from "./token-colors.ts";

/** As many as the shader's loop can follow; a plan may have more facets, whose reflections inside are then left out. */
const MOST_PLANES = 256;

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
    glassColor: { value: new Color(0.965, 0.992, 0.985) },
    glow: { value: new Color() },
    groundColor: { value: new Color() },
    wallColor: { value: new Color() },
    benchColor: { value: new Color() },
    windowColor: { value: new Color() },
    cardColor: { value: new Color() },
    hoveredFace: { value: NO_FACE },
    selectedFace: { value: NO_FACE },
    bodyAlpha: { value: 1 },
  };
}

const material = new ShaderMaterial({
  vertexShader: bodyVert,
  fragmentShader: `precision highp float;\n${room}\n${bodyFrag}`,
  uniforms: makeUniforms(),
  transparent: true,
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

function setPalette(palette: Palette): void {
  const { isDark } = palette;
  bodyUniforms.skinColor.value.copy(palette.skin);
  bodyUniforms.glow.value.copy(palette["ground-lit"]).lerp(palette.grip, 0.35);
  bodyUniforms.groundColor.value.copy(palette.ground);
  bodyUniforms.wallColor.value.copy(palette.ground).multiplyScalar(isDark ? 2.2 : 0.74);
  bodyUniforms.benchColor.value.copy(palette.shadow).multiplyScalar(isDark ? 1 : 0.9);
  bodyUniforms.windowColor.value.setRGB(isDark ? 1.5 : 1.15, isDark ? 1.25 : 1.16, isDark ? 0.95 : 1.18);
  bodyUniforms.cardColor.value.copy(palette["ground-lit"]).multiplyScalar(isDark ? 3 : 1);
}

function geometryOf(planes: readonly Plane[]): BufferGeometry {
  const { positions, normals, faces } = bodyArrays(planes);
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(positions, 3));
  geometry.setAttribute("normal", new BufferAttribute(normals, 3));
  geometry.setAttribute("face", new BufferAttribute(faces, 1));
  return geometry;
}

export function Body({
  planes,
  piece,
  palette,
  hovered,
  selected,
  alpha,
}: {
  planes: readonly Plane[];
  piece: Piece;
  palette: Palette;
  hovered: number | null;
  selected: number | null;
  alpha: number;
}) {
  const geometry = useMemo(() => geometryOf(planes), [planes]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  useEffect(() => {
    setPlanes(planes);
    bodyUniforms.eta.value = indexAt(opticalGlass(piece.glass).dispersion, LINE_D_NM);
    setPalette(palette);
    bodyUniforms.hoveredFace.value = hovered ?? NO_FACE;
    bodyUniforms.selectedFace.value = selected ?? NO_FACE;
    bodyUniforms.bodyAlpha.value = alpha;
    requestFrame();
  }, [planes, piece.glass, palette, hovered, selected, alpha]);
  return <mesh geometry={geometry} material={material} renderOrder={2} frustumCulled={false} />;
}
