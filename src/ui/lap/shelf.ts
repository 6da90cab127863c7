/** The browser's small storage; null where it refuses even to be named (some private modes). */
export function browserShelf(): Storage | null {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
}
