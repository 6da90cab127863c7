import type { storage as en } from "../en/storage.ts";
import type { Translated } from "../words.tsx";

export const storage: Translated<typeof en> = {
  status: {
    untouched: "Noch nichts aufzubewahren",
    waiting: "Geändert",
    keeping: "Wird aufbewahrt",
    kept: "Auf diesem Gerät aufbewahrt",
    "kept-as-copy": "Ein anderer Tab hat diesen Plan. Deine Arbeit wird als eigener Plan aufbewahrt.",
    "in-memory": "Nur aufbewahrt, solange diese Seite offen ist. Als Datei sichern.",
    failed: "Nicht auf diesem Gerät aufbewahrt. Deine Arbeit liegt noch auf der Werkbank: als Datei sichern.",
  },
  fault: {
    missing: "Dieser Browser hat keinen Speicher für Pläne.",
    denied:
      "Der Browser will hier nichts aufbewahren: ein privates Fenster, oder der Speicher ist für diese Seite abgeschaltet.",
    blocked:
      "Ein anderer Tab hält den Speicher fest. Schließe die anderen Tabs dieser Seite und öffne sie neu.",
    full: "Der Platz für diese Seite ist voll. Lösche Pläne, die du nicht mehr brauchst, oder schaffe Platz auf dem Datenträger.",
    damaged: "Der Speicher dieses Browsers ist beschädigt: Gelesenes stimmt nicht mit Geschriebenem überein.",
    lost: "Die Verbindung zum Speicher ist abgerissen. Öffne die Seite neu.",
  },
  persistent: "Der Browser hat zugesagt, deine Pläne nicht von selbst zu löschen.",
  notPersistent:
    "Der Browser darf deine Pläne löschen, wenn der Platz knapp wird. Sichere sie ab und zu in einer Datei.",
  unreadable: (message) => `Dieser Plan ist nicht mehr lesbar: ${message}`,
  unreadableSave: "Was davon übrig ist, als Datei sichern",
  benchUnkept:
    "Was auf der Werkbank liegt, konnte nicht aufbewahrt werden. Sichere es zuerst als Datei, oder mach ohne es weiter.",
  restored: {
    added: (name) => `${name}: hinzugefügt`,
    "already-there": (name) => `${name}: ist schon da, unverändert`,
    "added-beside": (name) => `${name}: anders als der hiesige, beide bleiben`,
    unreadable: (name, why) => `${name}: nicht lesbar (${why})`,
  },
  backup: "Alle Pläne in einer Datei sichern",
  restore: "Pläne aus einer Sicherung zurückholen",
  versionUnreadable: "Diese Fassung ist nicht mehr lesbar.",
  link: "Link zu diesem Plan",
  linkHolds: "Der Link enthält den ganzen Plan. Beim Erstellen wird nichts verschickt.",
};
