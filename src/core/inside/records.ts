/**
 * Every kind of design inside the glass, and how far each body reaches that light meets there: all lists derive from these tables.
 * How light meets the bodies stands apart, in `bodies.ts`: what is drawn first has no need of it.
 */
import { BACKING_FIELDS, backing } from "./backing.ts";
import { BUBBLE_FIELDS, bubble } from "./bubble.ts";
import { BUBBLES_FIELDS, bubbles } from "./bubbles.ts";
import { CORE_FIELDS, core } from "./core.ts";
import type { Fields, Shaped } from "./fields.ts";
import { PETALS_FIELDS, petals } from "./petals.ts";
import { PICTURE_FIELDS, picture } from "./picture.ts";
import type { InsideKind, InsideRecord } from "./record.ts";
import { RIBBON_FIELDS, ribbon } from "./ribbon.ts";
import type { Reach } from "./scene-design.ts";
import * as bodies from "./scene-design.ts";
import { SPECKLE_FIELDS, speckle } from "./speckle.ts";
import { SWIRL_FIELDS, swirl } from "./swirl.ts";
import { TWIST_FIELDS, twist } from "./twist.ts";

/** Fields in a plan, in the order in which kinds are offered. */
export const INSIDE_FIELDS = {
  core: CORE_FIELDS,
  bubble: BUBBLE_FIELDS,
  ribbon: RIBBON_FIELDS,
  petals: PETALS_FIELDS,
  backing: BACKING_FIELDS,
  speckle: SPECKLE_FIELDS,
  picture: PICTURE_FIELDS,
  twist: TWIST_FIELDS,
  swirl: SWIRL_FIELDS,
  bubbles: BUBBLES_FIELDS,
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
  twist,
  swirl,
  bubbles,
};
export const INSIDE_KINDS = Object.keys(INSIDE_FIELDS) as readonly InsideKind[];

const ofEllipsoid: Reach = ({ size }, x, y, z) => Math.hypot(size[0] * x, size[1] * y, size[2] * z);

/** Of what is melted: the tube that holds it, with room for what irregularity pushes out. */
const ofTube: Reach = (s, x, y, z) =>
  (s.size[0] + bodies.pushOf(s)) * Math.hypot(x, y) + (s.size[1] + bodies.pushOf(s)) * Math.abs(z);

/** The numbers of all bodies: each has its line in `REACHES`, and in `BODIES` beside. */
export type BodyNumber =
  | typeof bodies.CORE
  | typeof bodies.TINTED_CORE
  | typeof bodies.BUBBLE
  | typeof bodies.RIBBON
  | typeof bodies.PETALS
  | typeof bodies.BACKING
  | typeof bodies.SPECKLE
  | typeof bodies.PICTURE_DISC
  | typeof bodies.PICTURE_CORE
  | typeof bodies.TWIST
  | typeof bodies.MELTED_RIBBON
  | typeof bodies.MELTED_PETALS
  | typeof bodies.SWIRL;

/** How far each body reaches, by its number. A backing lies at the skin and is meant to be cut: nobody asks. */
export const REACHES: Readonly<Record<BodyNumber, Reach>> = {
  [bodies.CORE]: ofEllipsoid,
  [bodies.TINTED_CORE]: ofEllipsoid,
  [bodies.BUBBLE]: ofEllipsoid,
  // the rod that it twists in
  [bodies.RIBBON]: ({ size }, x, y, z) =>
    size[2] * Math.abs(z) + Math.hypot(size[0], size[1]) * Math.hypot(x, y),
  // the drum that holds their bowl
  [bodies.PETALS]: ({ size }, x, y, z) => size[0] * Math.hypot(x, y) + (size[1] / 2) * Math.abs(z) + size[2],
  [bodies.BACKING]: () => 1,
  [bodies.SPECKLE]: ({ size }) => size[0] + size[1],
  [bodies.PICTURE_DISC]: ({ size }, x, y) => size[0] * Math.hypot(x, y),
  [bodies.PICTURE_CORE]: ofEllipsoid,
  [bodies.TWIST]: ofTube,
  [bodies.MELTED_RIBBON]: ofTube,
  [bodies.MELTED_PETALS]: ofTube,
  [bodies.SWIRL]: ofTube,
};
