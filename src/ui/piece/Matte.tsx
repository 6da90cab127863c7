/** Matte bodies: what stands for a design inside, the dop. */
import { useEffect, useMemo } from "react";
import { type BufferGeometry, Color, DoubleSide, ShaderMaterial } from "three";
import matteFrag from "../../../shaders/piece/matte.frag.glsl?raw";
import matteVert from "../../../shaders/piece/matte.vert.glsl?raw";
import type { Piece } from "../../core/plan/document.ts";
import { dopGeometry } from "./dop-geometry.ts";
import { useViewport } from "./viewport.ts";

export function Matte({ geometry, color }: { geometry: BufferGeometry; color: Color }) {
  const { frames } = useViewport();
  const material = useMemo(
    () =>
      new ShaderMaterial({
        vertexShader: matteVert,
        fragmentShader: matteFrag,
        uniforms: { color: { value: new Color() } },
        side: DoubleSide,
      }),
    [],
  );
  useEffect(() => () => material.dispose(), [material]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  useEffect(() => {
    material.uniforms.color.value.copy(color);
    frames.request();
  }, [frames, material, color]);
  return <mesh geometry={geometry} material={material} renderOrder={1} frustumCulled={false} />;
}

export function DopStick({ piece, color }: { piece: Piece; color: Color }) {
  const geometry = useMemo(() => dopGeometry(piece), [piece]);
  return geometry ? <Matte geometry={geometry} color={color} /> : null;
}
