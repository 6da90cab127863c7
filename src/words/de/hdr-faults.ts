/** Was an einem Bild nicht stimmt, das Licht sein soll. */
import type { HdrFaultWords } from "../hdr-faults.ts";

export const hdrFaults: HdrFaultWords = {
  "header-cut": () => "das .hdr-Bild hört mitten in seinem Kopf auf",
  "no-picture": () => "es ist kein Radiance-Bild (.hdr; die erste Zeile muss mit #? beginnen)",
  encoding: ({ found }) => `das .hdr-Bild ist in ${found} geschrieben, gelesen wird nur 32-bit_rle_rgbe`,
  "row-order": ({ found }) =>
    `die Zeilen des .hdr-Bilds müssen von oben kommen (-Y Höhe +X Breite), nicht „${found}“`,
  size: ({ width, height, most }) =>
    `das .hdr-Bild hat ${width} mal ${height} Pixel; gelesen werden 1 bis ${most} Pixel`,
  broken: () => "das .hdr-Bild hört zu früh auf oder hat eine beschädigte Zeile",
};
