/** What the command line says of a field of a plan that it does not know. */
export const unknownField = (field: string): string =>
  `The field ${field} is not known to this version: it is kept in the file and has no effect.`;
