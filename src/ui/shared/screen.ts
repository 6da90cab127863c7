/** What the screens show beside the plan itself: sheets, the large picture, what is drawn of the piece. Never saved in the plan. */
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { Plan } from "../../core/plan/document.ts";
import { perStudio, type Studio, useStudioStore } from "../studio.ts";

export type SheetName =
  | "plans"
  | "examples"
  | "piece"
  | "settings"
  | "keys"
  | "help"
  | "models"
  | "customer"
  | "film"
  | "variants"
  | "card";
export type PictureName = "piece" | "profile" | "skin";

export interface Notice {
  readonly tone: "said" | "stop";
  readonly text: string;
  readonly details?: readonly string[];
  /** What to do about it, as a press. */
  readonly way?: { readonly words: string; readonly run: () => void };
}

export interface ScreenState {
  readonly sheet: SheetName | null;
  /** The picture that has the large place. */
  readonly large: PictureName;
  readonly showInside: boolean;
  readonly showDop: boolean;
  /** Whether what is inside the glass is being edited, in the column beside the piece. */
  readonly editsInside: boolean;
  /** Whether the colour of the glass is, likewise. */
  readonly editsGlass: boolean;
  /** Photographs dropped onto the page, until they are taken for the inside. */
  readonly photos: readonly File[];
  /** What the customer's page is made of, where it isn't the plan on the bench. */
  readonly forCustomer: Plan | null;
  /** Whether something is being made that no plan holds yet, as photographs that are not put inside: leaving the page asks. */
  readonly isMaking: boolean;
  readonly notice: Notice | null;
}

export const screenOf = perStudio(() =>
  createStore<ScreenState>(() => ({
    sheet: null,
    large: "piece",
    showInside: true,
    showDop: false,
    editsInside: false,
    editsGlass: false,
    photos: [],
    forCustomer: null,
    isMaking: false,
    notice: null,
  })),
);

export const openSheet = (studio: Studio, sheet: SheetName | null) =>
  screenOf(studio).setState({ sheet, forCustomer: null });
export const showToCustomer = (studio: Studio, plan: Plan) =>
  screenOf(studio).setState({ sheet: "customer", forCustomer: plan });
export const showLarge = (studio: Studio, large: PictureName) => screenOf(studio).setState({ large });
/** Shows a notification (toast) at the foot of the page; null takes it away. */
export const tell = (studio: Studio, notice: Notice | null) => screenOf(studio).setState({ notice });

export const useScreen = <T>(pick: (state: ScreenState) => T): T =>
  useStore(screenOf(useStudioStore()), pick);
