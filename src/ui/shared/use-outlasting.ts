/**
 * What is typed into a form and belongs to no plan yet, as the measures of a test facet: kept by the window, so that it outlasts a
 * reload and whatever takes the form away, until it is entered.
 */
import { type SetStateAction, useRef, useState } from "react";

const PREFIX = "glintwright-typed-";

/** What was typed before; null where there is nothing, or nothing readable, or the browser refuses. */
function kept<T>(key: string, read: (data: unknown) => T | null): T | null {
  try {
    return read(JSON.parse(globalThis.sessionStorage.getItem(PREFIX + key) ?? "null"));
  } catch {
    return null; // the form then begins empty
  }
}

function keep(key: string, text: string | null): void {
  try {
    if (text === null) globalThis.sessionStorage.removeItem(PREFIX + key);
    else globalThis.sessionStorage.setItem(PREFIX + key, text);
  } catch {
    // refused or full: it lasts as long as the form
  }
}

/**
 * State of a form under a name of its own.
 * @param empty what the form begins with, and what it is set to once all is entered: nothing is kept then
 * @param read what was kept, as plain data, or null for what can't be it
 * @param write the other way round
 */
export function useOutlasting<T extends object | string>(
  key: string,
  empty: T,
  read: (data: unknown) => T | null,
  write: (value: T) => unknown = (value) => value,
): readonly [T, (next: SetStateAction<T>) => void] {
  const [value, setValue] = useState(() => kept(key, read) ?? empty);
  // what is changed is the latest, also where something was waited for
  const latest = useRef(value);
  const set = (given: SetStateAction<T>): void => {
    const next = typeof given === "function" ? given(latest.current) : given;
    latest.current = next;
    setValue(next);
    keep(key, next === empty ? null : JSON.stringify(write(next)));
  };
  return [value, set];
}
