/** Thrown for an argument that can't be used, or a plan that can't be read; the message is one line for the person. */
export class UsageError extends Error {
  override readonly name = "UsageError";
}
