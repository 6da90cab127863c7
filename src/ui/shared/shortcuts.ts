/** Keys that work everywhere, and how they are written on this machine. */
import { useLayoutEffect } from "react";
import { isLapOpen } from "../lap/lap-open.ts";
import { type Studio, useStudioStore } from "../studio.ts";
import { choosePlanFile, savePlanFile } from "./files.ts";
import { openSheet } from "./screen.ts";

export type Shortcut = "undo" | "redo" | "open" | "save" | "plan" | "look" | "bench" | "ideas" | "keys";

interface Chord {
  readonly key: string;
  /** With Ctrl, or Command on a Mac. */
  readonly withCommand?: boolean;
  readonly withShift?: boolean;
  readonly run: (studio: Studio) => void;
}

const CHORDS: Readonly<Record<Shortcut, Chord>> = {
  undo: { key: "z", withCommand: true, run: (studio) => studio.getState().undo() },
  redo: { key: "z", withCommand: true, withShift: true, run: (studio) => studio.getState().redo() },
  open: { key: "o", withCommand: true, run: choosePlanFile },
  save: { key: "s", withCommand: true, run: savePlanFile },
  plan: { key: "1", run: (studio) => studio.getState().go("plan") },
  look: { key: "2", run: (studio) => studio.getState().go("look") },
  bench: { key: "3", run: (studio) => studio.getState().go("bench") },
  ideas: { key: "4", run: (studio) => studio.getState().go("ideas") },
  keys: { key: "?", run: (studio) => openSheet(studio, "keys") },
};

const isMac = (): boolean => /mac|iphone|ipad/i.test(navigator.platform);

/** What stands on the keys that are held down, in the language of the screen. */
export interface HeldKeys {
  readonly control: string;
  readonly shift: string;
}

/** A device that is held in the hand, whose only pointer is a finger, has no keys to speak of. */
export const hasKeys = (): boolean => window.matchMedia("(any-pointer: fine), (any-hover: hover)").matches;

/** "Ctrl+Z", or the Mac's own signs. */
export function keysFor(name: Shortcut, held: HeldKeys): string {
  const { key, withCommand, withShift } = CHORDS[name];
  const written = key.toUpperCase();
  if (isMac()) return `${withShift ? "⇧" : ""}${withCommand ? "⌘" : ""}${written}`;
  return [withCommand ? held.control : "", withShift ? held.shift : "", written].filter(Boolean).join("+");
}

const isWithin = (target: EventTarget | null, selector: string): boolean =>
  target instanceof HTMLElement && target.closest(selector) !== null;

function matches(chord: Chord, event: KeyboardEvent): boolean {
  const command = event.ctrlKey || event.metaKey;
  if (event.key.toLowerCase() !== chord.key || event.altKey) return false;
  if (command !== (chord.withCommand ?? false)) return false;
  // A sign such as ? needs Shift on some keyboards and not on others.
  return !chord.withCommand || event.shiftKey === (chord.withShift ?? false);
}

function onKeyDown(studio: Studio, event: KeyboardEvent): void {
  if (event.defaultPrevented) return;
  // Ctrl+Y is the other way to redo on machines without a Command key.
  const isOtherRedo = event.ctrlKey && !event.shiftKey && event.key.toLowerCase() === "y";
  const chord = isOtherRedo ? CHORDS.redo : Object.values(CHORDS).find((one) => matches(one, event));
  if (!chord) return;
  // While typing, plain keys are text, and undo belongs to the text.
  const isText = isWithin(event.target, "input, textarea, [contenteditable]");
  // A number field holds text of its own only while something is being typed.
  const isSettled = isWithin(event.target, "[role=spinbutton]:not([data-draft])");
  if (isText && (!chord.withCommand || (chord.key === "z" && !isSettled))) return;
  if (!chord.withCommand && isWithin(event.target, "[role=dialog], [role=menu], [role=listbox]")) return;
  event.preventDefault();
  // at the lap the plan stays as it is: a wet hand on the keys takes nothing back
  if (!isLapOpen() || chord === CHORDS.save) chord.run(studio);
}

/** Before the first paint: what is seen can be asked for by its keys. */
export function useShortcuts(): void {
  const studio = useStudioStore();
  useLayoutEffect(() => {
    const listen = (event: KeyboardEvent) => onKeyDown(studio, event);
    window.addEventListener("keydown", listen);
    return () => window.removeEventListener("keydown", listen);
  }, [studio]);
}
