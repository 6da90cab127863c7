/** How the piece is looked at: light, finish shown, what it is compared with. Kept as long as the studio, never in the plan. */

import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { EquirectPicture } from "../../core/optics/equirect.ts";
import type { GlassName } from "../../core/optics/glasses.ts";
import type { LightName } from "../../core/optics/light-settings.ts";
import type { MaterialName } from "../../core/optics/materials.ts";
import type { Finish, Plan } from "../../core/plan/document.ts";
import type { Behind } from "../../render/pack-scene.ts";
import { perStudio, type Studio, useStudioStore } from "../studio.ts";

export type LightChoice = LightName | "picture";
/** As each tier of the plan says, or every facet the same. */
export type FinishChoice = "planned" | Finish;
export type GlassChoice = "planned" | GlassName;
/** What the piece lies on. */
export type TableChoice = "none" | MaterialName;
/** On what side: the largest facet that it rests on by itself, or as on the command line. */
export type RestChoice = "flat" | "side" | "back" | "ring";
type Against = "nothing" | "uncut" | "other";
type Layout = "line" | "side";

/** What of the look may be another one in what is compared; what is missing is as in the picture beside it. */
export interface OtherLook {
  readonly light?: LightChoice;
  readonly finish?: FinishChoice;
  readonly glass?: GlassChoice;
}

/** A plan taken from elsewhere for one side of the picture: a version, one of the shelf, a file's, an idea. */
export interface Compared {
  /** Which of those that can be chosen it is. */
  readonly id: string;
  readonly name: string;
  readonly plan: Plan;
}

export interface LookSettings {
  readonly light: LightChoice;
  readonly lightTurnDeg: number;
  /** A person's own picture all around, with its file's name. */
  readonly picture: { readonly name: string; readonly pixels: EquirectPicture } | null;
  /** Stops. */
  readonly exposure: number;
  /** Of the lens; null shows everything sharp. */
  readonly fNumber: number | null;
  readonly finish: FinishChoice;
  readonly isWet: boolean;
  readonly glass: GlassChoice;
  readonly showInside: boolean;
  readonly hasDispersion: boolean;
  readonly behind: Behind;
  readonly table: TableChoice;
  readonly rest: RestChoice;
  readonly against: Against;
  /** What is looked at while another is beside it; null for the plan on the bench. */
  readonly own: Compared | null;
  /** What stands beside it; null for the plan on the bench, in another glass, finish or light. */
  readonly other: Compared | null;
  readonly otherLook: OtherLook;
  readonly layout: Layout;
  /** Where the dividing line stands, 0 .. 1 of the picture's width. */
  readonly divider: number;
  readonly isTurning: boolean;
}

export const DEFAULT_SETTINGS: LookSettings = {
  light: "north-window",
  lightTurnDeg: 0,
  picture: null,
  exposure: 0,
  fNumber: null,
  finish: "planned",
  isWet: false,
  glass: "planned",
  showInside: true,
  hasDispersion: true,
  behind: "nothing",
  table: "none",
  rest: "side",
  against: "nothing",
  own: null,
  other: null,
  otherLook: {},
  layout: "line",
  divider: 0.5,
  isTurning: false,
};

export const lookOf = perStudio(() => createStore<LookSettings>(() => DEFAULT_SETTINGS));
export const setLook = (studio: Studio, change: Partial<LookSettings>): void =>
  lookOf(studio).setState(change);
/** The plan that the picture is of (on the left, where two are compared): the one on the bench, or what was chosen to be compared. */
export const lookedAt = (plan: Plan, { against, own }: Pick<LookSettings, "against" | "own">): Plan =>
  against === "other" && own ? own.plan : plan;
export const useLook = <T>(pick: (settings: LookSettings) => T): T =>
  useStore(lookOf(useStudioStore()), pick);
