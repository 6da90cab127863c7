/** How a person likes to see things. Never part of a plan; kept per browser. */

export interface Preferences {
  readonly units: "mm" | "inch" | "inch-fraction";
  /** Which angle the screens show; files always hold the arm angle. */
  readonly angles: "arm" | "cutting";
  readonly theme: "system" | "light" | "dark";
  /** Null follows the browser. */
  readonly language: "en" | "de" | null;
  readonly motion: "system" | "reduced";
  readonly snapping: boolean;
}

export const DEFAULT_PREFERENCES: Preferences = {
  units: "mm",
  angles: "arm",
  theme: "system",
  language: null,
  motion: "system",
  snapping: true,
};

/** Words allowed in each field. */
const ALLOWED: { readonly [K in keyof Preferences]: readonly Preferences[K][] } = {
  units: ["mm", "inch", "inch-fraction"],
  angles: ["arm", "cutting"],
  theme: ["system", "light", "dark"],
  language: ["en", "de", null],
  motion: ["system", "reduced"],
  snapping: [true, false],
};

/** Takes every field that is readable, the default for every other. */
export function preferencesFromData(data: unknown): Preferences {
  const given = (typeof data === "object" && data !== null ? data : {}) as Record<string, unknown>;
  const fields = Object.entries(ALLOWED).map(([key, allowed]) => {
    const fallback = DEFAULT_PREFERENCES[key as keyof Preferences];
    return [key, (allowed as readonly unknown[]).includes(given[key]) ? given[key] : fallback];
  });
  return Object.fromEntries(fields) as Preferences;
}

/** The part of the browser's localStorage that is needed; null where there is none. */
export type TextShelf = Pick<Storage, "getItem" | "setItem">;
/** The browser's localStorage; null where it refuses (some private windows throw on looking). */
export function browserShelf(): Storage | null {
  try {
    return globalThis.localStorage ?? null;
  } catch {
    return null; // everything works without it: preferences then last as long as the page
  }
}

const SHELF_KEY = "glintwright-preferences";

/** The kept preferences; defaults when nothing readable is kept or the browser refuses. */
export function loadPreferences(shelf: TextShelf | null): Preferences {
  try {
    return preferencesFromData(JSON.parse(shelf?.getItem(SHELF_KEY) ?? "null"));
  } catch {
    return DEFAULT_PREFERENCES; // unreadable or refused: the defaults are a full answer
  }
}

/** @returns whether the browser kept them */
export function savePreferences(shelf: TextShelf | null, preferences: Preferences): boolean {
  try {
    shelf?.setItem(SHELF_KEY, JSON.stringify(preferences));
    return shelf !== null;
  } catch {
    return false;
  }
}
