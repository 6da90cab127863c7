/** A name that nothing else has. `crypto.randomUUID` is missing on plain http; `getRandomValues` is everywhere. */
export function freshId(): string {
  if (typeof crypto.randomUUID === "function") return crypto.randomUUID();
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
}
