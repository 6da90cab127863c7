import type { shell as en } from "../en/shell.ts";
import type { Translated } from "../language.ts";

export const shell: Translated<typeof en> = {
  product: "Glintwright",
  places: { label: "Orte", plan: "Plan", look: "Ansicht", bench: "Werkbank" },
  skip: "Zum Rezept springen",
  undo: "Rückgängig",
  redo: "Wiederholen",
  undoOf: (what) => `Rückgängig: ${what}`,
  redoOf: (what) => `Wiederholen: ${what}`,
  nothingToUndo: "Nichts rückgängig zu machen",
  nothingToRedo: "Nichts zu wiederholen",
  more: "Mehr",
  heldKeys: { control: "Strg", shift: "Umschalt" },
  menu: {
    plans: "Eigene Pläne",
    examples: "Beispiele",
    fresh: "Neuer Plan",
    open: "Plandatei öffnen",
    save: "Plan als Datei sichern",
    piece: "Stück und Rad",
    settings: "Einstellungen",
    keys: "Tastatur",
    help: "Hilfe",
    exportModel: "Modelle und Links",
    card: "Facettenkarte",
  },
  close: "Schließen",
  done: "Fertig",
  cancel: "Abbrechen",
  planName: "Name des Plans",
  unnamed: "Plan ohne Namen",
  loadingPlace: "Wird bereitgelegt",
  pictureFailed: "Dieses Gerät kann das Glas gerade nicht darstellen.",
  pictureFailedWhat: "Das Stück ist dafür in Linien gezeichnet. Alles andere geht.",
  pictureAgain: "Noch einmal versuchen",
  crashed: "Dieser Teil der Seite geht gerade nicht.",
  crashedWhat: "Der Plan ist sicher: Er ist so aufgehoben wie nach der letzten Änderung.",
  crashedAgain: "Wieder zeigen",
  crashedSave: "Plan als Datei sichern",
  fileBad: (file) => `${file} lässt sich nicht öffnen`,
  fileSafe: "Der Plan auf der Werkbank ist unverändert.",
  fileUnknown: (fields) => `Aufgehoben, aber nicht verstanden: ${fields}`,
  fileOpened: (name) => `${name} geöffnet`,
  fileSaved: (file) => `Gesichert als ${file}`,
  dropHere: "Loslassen, um diesen Plan zu öffnen",
  kept: {
    untouched: "",
    waiting: "Wird aufgehoben",
    keeping: "Wird aufgehoben",
    kept: "Auf diesem Gerät aufgehoben",
    "kept-as-copy": "Als Kopie aufgehoben: Ein anderes Fenster hat diesen Plan offen",
    "in-memory": "Nur bis zum Schließen der Seite: als Datei sichern",
    failed: "Nicht aufgehoben: als Datei sichern",
  },
  notKept: "Deine Arbeit wird auf diesem Gerät nicht aufgehoben.",
  notRead: "Nicht alles, was auf diesem Gerät aufgehoben ist, lässt sich lesen.",
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
    "Ein Plan, der nicht zu lang ist, steht in der Adresse dieser Seite: Sie neu zu laden, bringt ihn zurück.",
  benchUnkept:
    "Was auf der Werkbank liegt, ließ sich nicht aufheben und bleibt darum dort. Erst als Datei sichern.",
  piecePicture: "Das Stück",
  strip: { piece: "Stück", profile: "Profil", skin: "Haut", group: "Bilder" },
  enlarge: (what) => `Groß zeigen: ${what}`,
  shrink: "Zurück zum Stück",
  updateReady: "Eine neue Fassung liegt bereit.",
  updateNow: "Jetzt verwenden",
  updateLater: "Später",
  guideOffer: {
    title: "Ein kurzer Rundgang",
    offer: "Neu hier? Ein kurzer Rundgang um die Werkbank, etwa zwei Minuten.",
    start: "Zeig mir alles",
    no: "Jetzt nicht",
  },
};
