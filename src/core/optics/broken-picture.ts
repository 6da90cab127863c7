/** Thrown for a picture in a plan that can't be decoded; says which. The message is for a trace. */
export class BrokenPicture extends Error {
  override readonly name = "BrokenPicture";
  constructor(
    readonly id: string,
    cause: unknown,
  ) {
    super(`pictures.${id}`, { cause });
  }
}
