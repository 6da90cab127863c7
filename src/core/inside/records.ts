/** Every kind of design inside the glass, and every kind of body that light meets there: two tables, all else derives from them. */
import { BACKING_FIELDS, backing, layerBehind } from "./backing.ts";
import { BUBBLE_FIELDS, bubble, bubbleOfAir } from "./bubble.ts";
import { CORE_FIELDS, core, opaqueCore, tintedCore } from "./core.ts";
import type { Fields, Shaped } from "./fields.ts";
import { bowl, PETALS_FIELDS, petals } from "./petals.ts";
import { PICTURE_FIELDS, picture, pictureCore, pictureDisc } from "./picture.ts";
import type { InsideKind, InsideRecord } from "./record.ts";
import { band, RIBBON_FIELDS, ribbon } from "./ribbon.ts";
import type { Body } from "./scene-design.ts";
import * as bodies from "./scene-design.ts";
import { grains, SPECKLE_FIELDS, speckle } from "./speckle.ts";

/** Fields in a plan, in the order in which kinds are offered. */
export const INSIDE_FIELDS = {
  core: CORE_FIELDS,
  bubble: BUBBLE_FIELDS,
  ribbon: RIBBON_FIELDS,
  petals: PETALS_FIELDS,
  backing: BACKING_FIELDS,
  speckle: SPECKLE_FIELDS,
  picture: PICTURE_FIELDS,
} as const satisfies Readonly<Record<string, Fields>>;

type Table = typeof INSIDE_FIELDS;
/** What a plan may say of one thing inside. */
export type AnyInsideDesign = { readonly [K in keyof Table]: Shaped<K, Table[K]> }[keyof Table];

export const INSIDE: { readonly [K in InsideKind]: InsideRecord<K> } = {
  core,
  bubble,
  ribbon,
  petals,
  backing,
  speckle,
  picture,
};
export const INSIDE_KINDS = Object.keys(INSIDE_FIELDS) as readonly InsideKind[];

/** By the number that shaders know each by. */
export const BODIES: Readonly<Record<number, Body>> = {
  [bodies.CORE]: opaqueCore,
  [bodies.TINTED_CORE]: tintedCore,
  [bodies.BUBBLE]: bubbleOfAir,
  [bodies.RIBBON]: band,
  [bodies.PETALS]: bowl,
  [bodies.BACKING]: layerBehind,
  [bodies.SPECKLE]: grains,
  [bodies.PICTURE_DISC]: pictureDisc,
  [bodies.PICTURE_CORE]: pictureCore,
};
