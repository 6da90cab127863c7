/** Thrown for an argument that can't be used; the message is one line for the person. */
export class UsageError extends Error {
  override readonly name = "UsageError";
}
