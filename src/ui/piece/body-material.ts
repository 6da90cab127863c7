/** The drawn glass's program and what it is told. */
import {
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
import caps from "../../../shaders/caps.glsl?raw";
import fresnel from "../../../shaders/fresnel.glsl?raw";
import light from "../../../shaders/light.glsl?raw";
import bodyFrag from "../../../shaders/piece/body.frag.glsl?raw";
import bodyVert from "../../../shaders/piece/body.vert.glsl?raw";
import tone from "../../../shaders/tone.glsl?raw";
import { FIELDS } from "../../core/measure/caps.ts";
import { COUNTS } from "../../core/plan/limits.ts";
import { ROW_TEXELS } from "../../render/plane-texels.ts";
import type { Room } from "./room.ts";

export const NO_FACE = -5;
/** How often a path is followed on: in software one followed further costs more than it shows. */
export const SEGMENTS = { card: 3, software: 1 } as const;

export function makeUniforms() {
  const planes = new DataTexture(new Float32Array(4), 1, 1, RGBAFormat, FloatType);
  planes.minFilter = NearestFilter;
  planes.magFilter = NearestFilter;
  return {
    planes: { value: planes },
    eta: { value: 1.5 },
    eye: { value: new Vector3() },
    away: { value: new Vector3() },
    showsPage: { value: true },
    toRoom: { value: new Matrix3() },
    exposure: { value: 1 },
    skinColor: { value: new Color() },
    glassColor: { value: new Color(0.95, 0.985, 0.974) },
    tint: { value: new Vector3() },
    casings: { value: Array.from({ length: COUNTS.cased }, () => new Vector4()) },
    casingCount: { value: 0 },
    glow: { value: new Color() },
    groundColor: { value: new Color() },
    hoveredFace: { value: NO_FACE },
    selectedFace: { value: NO_FACE },
    bodyAlpha: { value: 1 },
    segments: { value: SEGMENTS.card as number },
  };
}

export type BodyUniforms = ReturnType<typeof makeUniforms>;

/** One material a body: each is seen with its own numbers. */
export function makeMaterial(
  uniforms: BodyUniforms,
  room: Pick<Room, "defines" | "uniforms">,
): ShaderMaterial {
  return new ShaderMaterial({
    vertexShader: bodyVert,
    defines: { ...room.defines, MAX_CASINGS: COUNTS.cased, FIELDS, ROW_TEXELS },
    fragmentShader: `precision highp float;\n${fresnel}\n${light}\n${tone}\n${caps}\n${bodyFrag}`,
    uniforms: { ...uniforms, ...room.uniforms },
    transparent: true,
    premultipliedAlpha: true,
    polygonOffset: true,
    polygonOffsetFactor: 1,
    polygonOffsetUnits: 2,
  });
}
