/** The glass body: exact facets and the skin between them, drawn with true refraction inside the convex solid. */
import { useThree } from "@react-three/fiber";
import { useEffect, useLayoutEffect, useMemo } from "react";
import { BufferAttribute, BufferGeometry, type Camera, type WebGLRenderer } from "three";
import type { Plane } from "../../core/geometry/plane.ts";
import type { Solid } from "../../core/geometry/solid-types.ts";
import { addedByChannel, bordersOf } from "../../core/optics/casing.ts";
import { indexAt, LINE_D_NM, opticalGlass } from "../../core/optics/glasses.ts";
import type { Piece } from "../../core/plan/document.ts";
import { planeTexels, ROW_TEXELS } from "../../render/plane-texels.ts";
import { BALL_EDGES, type BodyArrays, ballGeometry, facetArrays } from "./body-geometry.ts";
import { type BodyUniforms, makeMaterial, makeUniforms, NO_FACE, SEGMENTS } from "./body-material.ts";
import { type Room, useRoom } from "./room.ts";
import type { Palette } from "./token-colors.ts";

/** From where this frame is seen, and with it where the light stands. */
function setEye(
  { eye, away, toRoom }: BodyUniforms,
  { matrixWorld }: Camera,
  { isWithEye, axes }: Room,
): void {
  eye.value.setFromMatrixPosition(matrixWorld);
  away.value.setFromMatrixColumn(matrixWorld, 2).negate();
  if (isWithEye) toRoom.value.setFromMatrix4(matrixWorld).transpose();
  else toRoom.value.set(...axes.right, ...axes.up, ...axes.front);
}

function setPlanes({ planes: { value: texture } }: BodyUniforms, planes: readonly Plane[]): void {
  const data = planeTexels(Float64Array.from(planes.flatMap(({ n, h }) => [...n, h])));
  const height = data.length / (4 * ROW_TEXELS);
  // a texture on the card keeps the size that it was made with
  if (height !== texture.image.height) texture.dispose();
  texture.image = { data, width: ROW_TEXELS, height };
  texture.needsUpdate = true;
}

function setGlass({ eta, tint, casings, casingCount }: BodyUniforms, piece: Piece): void {
  const radiusMm = piece.diameterMm / 2;
  eta.value = indexAt(opticalGlass(piece.glass).dispersion, LINE_D_NM);
  tint.value.set(...addedByChannel(piece.tint, undefined, radiusMm));
  const borders = bordersOf(piece);
  borders.forEach(({ radius, tint: own, around }, i) => {
    casings.value[i].set(...addedByChannel(own, around, radiusMm), radius);
  });
  casingCount.value = borders.length;
}

function setPalette(uniforms: BodyUniforms, palette: Palette): void {
  uniforms.skinColor.value.copy(palette.skin);
  uniforms.glow.value.copy(palette["ground-lit"]).lerp(palette.grip, 0.35);
  uniforms.groundColor.value.copy(palette["ground-lit"]);
}

function geometryOf({ positions, normals, faces }: BodyArrays): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(positions, 3));
  geometry.setAttribute("normal", new BufferAttribute(normals, 3));
  geometry.setAttribute("face", new BufferAttribute(faces, 1));
  return geometry;
}

/** Whether pictures are computed on the processor. */
function isSoftware(renderer: WebGLRenderer): boolean {
  const gl = renderer.getContext();
  const info = gl.getExtension("WEBGL_debug_renderer_info");
  return (
    info !== null &&
    /swiftshader|llvmpipe|software/i.test(String(gl.getParameter(info.UNMASKED_RENDERER_WEBGL)))
  );
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
  const { gl, invalidate } = useThree();
  const uniforms = useMemo(makeUniforms, []);
  const inSoftware = useMemo(() => isSoftware(gl), [gl]);
  const room = useRoom(inSoftware);
  const material = useMemo(() => makeMaterial(uniforms, room), [uniforms, room]);
  useEffect(() => () => uniforms.planes.value.dispose(), [uniforms]);
  useEffect(() => () => material.dispose(), [material]);
  useLayoutEffect(() => {
    uniforms.segments.value = inSoftware ? SEGMENTS.software : SEGMENTS.card;
  }, [inSoftware, uniforms]);
  const facets = useMemo(() => geometryOf(facetArrays(solid.facets)), [solid]);
  const ball = useMemo(() => ballGeometry(inSoftware ? BALL_EDGES.software : BALL_EDGES.card), [inSoftware]);
  useEffect(() => () => facets.dispose(), [facets]);
  useEffect(() => () => ball.dispose(), [ball]);
  useEffect(() => {
    setPlanes(uniforms, planes);
    setGlass(uniforms, piece);
    setPalette(uniforms, palette);
    uniforms.hoveredFace.value = hovered ?? NO_FACE;
    uniforms.selectedFace.value = selected ?? NO_FACE;
    uniforms.bodyAlpha.value = alpha;
    uniforms.showsPage.value = room.showsPage;
    uniforms.exposure.value = 2 ** room.exposure;
    invalidate();
  }, [invalidate, uniforms, planes, piece, palette, hovered, selected, alpha, room]);
  return [ball, facets].map((geometry) => (
    <mesh
      key={geometry === ball ? "skin" : "facets"}
      geometry={geometry}
      material={material}
      renderOrder={2}
      onBeforeRender={(_renderer, _scene, camera) => setEye(uniforms, camera, room)}
      frustumCulled={false}
    />
  ));
}
