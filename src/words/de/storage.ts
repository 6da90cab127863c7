/** Was dagegen steht, Pläne auf diesem Gerät aufzuheben. */

import type { storage as en } from "../en/storage.ts";
import type { Translated } from "../language.ts";

export const storage: Translated<typeof en> = {
  faults: {
    missing:
      "Dieser Browser bietet keinen Speicher, also halten Pläne nur, solange diese Seite offen ist. Sichere sie als Dateien.",
    denied:
      "Der Browser hebt für diese Seite nichts auf (privates Fenster oder Speicher abgeschaltet), also halten Pläne nur, solange diese Seite offen ist. Sichere sie als Dateien.",
    blocked:
      "Ein anderes Fenster hält den Speicher mit einer älteren Fassung dieser Seite. Schließe es und lade diese Seite neu.",
    newer:
      "Eine neuere Fassung dieser Seite hat den Speicher geändert. Schließe alle ihre Fenster und lade die Seite neu, dann kommt diese Fassung.",
    unreadable:
      "Der Plan ist größer geworden, als eine Plandatei fasst, und ließe sich nicht wieder öffnen. Er liegt noch auf der Bank: Nimm die letzte Änderung zurück.",
    full: "Die Platte oder der Anteil dieser Seite daran ist voll. Der Plan liegt noch auf der Werkbank: Sichere ihn als Datei oder lösche Pläne, die du nicht brauchst. Es wird von selbst wieder versucht.",
    damaged:
      "Etwas, das auf diesem Gerät aufgehoben ist, lässt sich nicht lesen; „Eigene Pläne“ im Menü zeigt es. Was auf der Werkbank liegt, ist heil: Sichere es als Datei.",
    lost: "Die Verbindung zum Speicher ist abgerissen. Der Plan liegt noch auf der Werkbank: Sichere ihn als Datei und lade die Seite neu.",
    unforeseen:
      "Mit dem Speicher ließ sich nichts anfangen, aus einem Grund, den diese Seite nicht kennt; also halten Pläne nur, solange diese Seite offen ist. Sichere sie als Dateien.",
  },
  addressCarries:
    "Der Plan auf der Werkbank steht, wenn er nicht zu lang ist, in der Adresse dieser Seite, ohne seine Bilder: Sie neu zu laden, bringt ihn zurück.",
  updateReady: "Eine neue Fassung liegt bereit.",
  updateNow: "Jetzt verwenden",
  updateLater: "Später",
  benchUnkept:
    "Was auf der Werkbank liegt, ließ sich nicht aufheben und bleibt darum dort. Erst als Datei sichern.",
};
