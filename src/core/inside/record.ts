/** What one kind of design inside is made of, beside its fields. */
import type { InsideDesign, Placement } from "../plan/document.ts";
import type { Packing, SceneDesign } from "./scene-design.ts";

export type InsideKind = InsideDesign["kind"];
type DesignOf<K extends InsideKind> = Extract<InsideDesign, { readonly kind: K }>;

/** What moves a design as a whole: its place along the axis, and what of its placement shows. */
type Move = "up" | Exclude<keyof Placement, "atMm">;

export interface InsideRecord<K extends InsideKind> {
  /** The bodies that light meets. */
  readonly pack: (design: DesignOf<K>, packing: Packing) => readonly SceneDesign[];
  /**
   * A first one that fits well inside the piece, colours of our own; null for what doesn't begin with numbers.
   * @param share a share of the piece's diameter, mm, rounded
   */
  readonly first: ((share: (part: number) => number) => DesignOf<K>) | null;
  readonly moves: readonly Move[];
}
