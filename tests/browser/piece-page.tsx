/** The drawn piece's programs without the rest of it: each is compiled, and draws a disc of glass that faces the eye. */
import {
  BufferAttribute,
  Mesh,
  NoToneMapping,
  OrthographicCamera,
  PlaneGeometry,
  Scene,
  WebGLRenderer,
} from "three";
import { LIGHT_SETTINGS, type LightName } from "../../src/core/optics/light-settings.ts";
import { inUnits } from "../../src/core/optics/lights.ts";
import { planeTexels, ROW_TEXELS } from "../../src/render/plane-texels.ts";
import { makeMaterial, makeUniforms, SEGMENTS } from "../../src/ui/piece/body-material.ts";
import { asDrawn, environmentOf, inLight } from "../../src/ui/piece/room.ts";

const SIDE = 16;

/** Bytes of a picture of `SIDE` squared, RGBA; a program that doesn't compile is an error with the compiler's words. */
function draw(name: LightName, inSoftware: boolean): number[] {
  const renderer = new WebGLRenderer({ alpha: true, preserveDrawingBuffer: true });
  renderer.toneMapping = NoToneMapping;
  renderer.setSize(SIDE, SIDE);
  renderer.setClearAlpha(0);
  let failed: string | undefined;
  renderer.debug.onShaderError = (gl, program, vertex, fragment) => {
    failed = [gl.getProgramInfoLog(program), gl.getShaderInfoLog(vertex), gl.getShaderInfoLog(fragment)].join(
      "\n",
    );
  };
  const light = asDrawn(
    inUnits({ kind: "setting", setting: LIGHT_SETTINGS[name], turnRad: 0 }, 15),
    inSoftware,
  );
  const uniforms = makeUniforms();
  const [plane, reach] = [{ n: [0, 0, 1], h: 0.8 } as const, 0.5];
  const data = planeTexels(Float64Array.of(...plane.n, plane.h));
  uniforms.planes.value.image = { data, width: ROW_TEXELS, height: data.length / (4 * ROW_TEXELS) };
  uniforms.planes.value.needsUpdate = true;
  uniforms.eye.value.set(0, 0, 5);
  uniforms.away.value.set(0, 0, -1);
  uniforms.showsPage.value = false;
  uniforms.segments.value = inSoftware ? SEGMENTS.software : SEGMENTS.card;
  const material = makeMaterial(uniforms, inLight(light, environmentOf(light)));
  const facet = new PlaneGeometry(2 * reach, 2 * reach).translate(0, 0, plane.h);
  facet.setAttribute("face", new BufferAttribute(new Float32Array(4), 1));
  const scene = new Scene();
  scene.add(new Mesh(facet, material));
  const camera = new OrthographicCamera(-reach, reach, reach, -reach, 0.1, 10);
  camera.position.z = 5;
  renderer.render(scene, camera);
  const gl = renderer.getContext();
  const bytes = new Uint8Array(4 * SIDE * SIDE);
  gl.readPixels(0, 0, SIDE, SIDE, gl.RGBA, gl.UNSIGNED_BYTE, bytes);
  const wrong = gl.getError();
  renderer.dispose();
  renderer.forceContextLoss();
  if (failed !== undefined) throw new Error(failed);
  if (wrong !== gl.NO_ERROR) throw new Error(`the context complains: ${wrong}`);
  return [...bytes];
}

Object.assign(window, { draw });
