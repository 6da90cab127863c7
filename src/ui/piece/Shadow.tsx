/** The soft shadow under the glass, always below it on the screen. */
import { useFrame } from "@react-three/fiber";
import { useEffect, useMemo, useRef } from "react";
import { Color, type Mesh, PlaneGeometry, ShaderMaterial } from "three";
import shadowFrag from "../../../shaders/piece/shadow.frag.glsl?raw";
import shadowVert from "../../../shaders/piece/shadow.vert.glsl?raw";
import { eyeFrame } from "./camera.ts";
import type { Palette } from "./token-colors.ts";
import { useViewport } from "./viewport.ts";

const WIDE = 2.9;
const HIGH = 0.42;
const BELOW = 1.03;

export function Shadow({ palette }: { palette: Palette }) {
  const { eye, frames } = useViewport();
  const invalidate = frames.request;
  const mesh = useRef<Mesh>(null);
  const [geometry, material] = useMemo(
    () => [
      new PlaneGeometry(WIDE, HIGH),
      new ShaderMaterial({
        vertexShader: shadowVert,
        fragmentShader: shadowFrag,
        uniforms: {
          shadowColor: { value: new Color() },
          glintColor: { value: new Color() },
          strength: { value: 0 },
        },
        transparent: true,
        depthTest: false,
        depthWrite: false,
      }),
    ],
    [],
  );
  useEffect(() => {
    material.uniforms.shadowColor.value.copy(palette.shadow);
    material.uniforms.glintColor.value.copy(palette["ground-lit"]);
    material.uniforms.strength.value = palette.isDark ? 0.75 : 0.34;
    invalidate();
  }, [invalidate, material, palette]);
  // Faces the eye and hangs below the piece, whichever way the piece is turned.
  useFrame(({ camera }) => {
    const { up } = eyeFrame(eye.getState().view);
    mesh.current?.position.set(-BELOW * up[0], -BELOW * up[1], -BELOW * up[2]);
    mesh.current?.quaternion.copy(camera.quaternion);
  });
  return <mesh ref={mesh} geometry={geometry} material={material} renderOrder={0} frustumCulled={false} />;
}
