/** Text as XML character data or attribute value: a name is text everywhere, never markup. */

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&apos;",
};

/** What XML 1.0 (section 2.2) has no way to write: control characters, lone surrogates, U+FFFE and U+FFFF. */
const UNWRITABLE =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must go
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

export const escapeXml = (text: string): string =>
  text.replace(UNWRITABLE, "\ufffd").replace(/[&<>"']/g, (c) => ENTITIES[c]);
