/** Was die Befehlszeile von einem Feld eines Plans sagt, das sie nicht kennt. */
export const unknownField = (field: string): string =>
  `Das Feld ${field} kennt diese Fassung nicht: Es bleibt in der Datei und hat keine Wirkung.`;
