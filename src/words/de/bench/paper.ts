/** Words of the sheet to pin up, as a part of the bench. */
import type { paper as en } from "../../en/bench/paper.ts";
import type { Translated } from "../../language.ts";

export const paper: Translated<typeof en> = {
  paper: {
    what: "Die ganze Arbeit auf ein oder zwei Seiten, zum Anheften neben der Scheibe.",
    size: "Papier",
    print: "Drucken",
    save: "Als Datei sichern",
    trueSize:
      "Mit 100 % drucken, nicht an die Seite anpassen: Die Breitenlehren sind wahr groß. Prüf den 50-mm-Balken mit dem Lineal.",
    preview: "Das Blatt, wie es gedruckt wird",
    larger: "In wahrer Größe zeigen",
    fitted: "In die Breite einpassen",
    failed: "Das Blatt ließ sich nicht machen. Dein Plan ist sicher; lade die Seite neu.",
  },
};
