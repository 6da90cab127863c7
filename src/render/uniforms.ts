/** Values of uniforms by kind, apart from the programs that take them: what is drawn first packs its light so too, and compiles nothing here. */

/** One uniform's value: the kind says which of GL's setters takes it. */
export type UniformValue =
  | { readonly kind: "int" | "uint" | "float"; readonly value: number }
  | { readonly kind: "vec2" | "vec3" | "vec4"; readonly value: readonly number[] | Float32Array }
  | { readonly kind: "mat3"; readonly value: readonly number[] | Float32Array };
export type Uniforms = Readonly<Record<string, UniformValue>>;

export const int = (value: number): UniformValue => ({ kind: "int", value });
export const uint = (value: number): UniformValue => ({ kind: "uint", value });
export const float = (value: number): UniformValue => ({ kind: "float", value });
export const vec2 = (value: readonly number[]): UniformValue => ({ kind: "vec2", value });
/** Any number of vec3, likewise. */
export const vec3 = (value: readonly number[]): UniformValue => ({ kind: "vec3", value });
/** Any number of vec4: an array uniform is set as a whole. */
export const vec4 = (value: readonly number[] | Float32Array): UniformValue => ({ kind: "vec4", value });
export const mat3 = (value: readonly number[]): UniformValue => ({ kind: "mat3", value });
