/** Wörter für das Foto der eigenen Murmel. */
import type { photo as en } from "../en/photo.ts";
import type { Translated } from "../language.ts";

export const photo: Translated<typeof en> = {
  title: "Die eigene Murmel im Inneren",
  intro:
    "Ein Foto der ungeschliffenen Kugel, gerade von vorn, wird zum Inneren: Jede Stelle bekommt die Farbe, die die Kamera dort durch das runde Glas sah. Es bleibt auf diesem Gerät und in der Datei des Plans.",
  choose: "Foto wählen",
  other: "Anderes Foto wählen",
  unreadable: (name) =>
    `${name} lässt sich nicht als Bild lesen. PNG, JPEG und was dieser Browser sonst zeigt, geht.`,
  looking: "Die Kugel wird gesucht ...",
  none: "Kein runder Umriss gefunden. Lege den Kreis selbst auf den Rand der Kugel.",
  tooSmall: (pixels) =>
    `Die Kugel ist nur ${pixels} Pixel groß: zu klein für ein Bild von ihr. Geh näher heran, oder lege den Kreis selbst.`,
  cutOff: "Ein Teil der Kugel liegt außerhalb des Fotos: Was nicht zu sehen ist, bleibt klar.",
  circle: "Der Umriss der Kugel: Verschiebe den Kreis, sein Griff ändert die Größe",
  across: "Mitte, von links",
  down: "Mitte, von oben",
  radius: "Radius",
  distance: "Kamera zur Kugel",
  distanceHint: "Vom Objektiv zur Mitte der Kugel. Unbekannt: Das Zehnfache des Radius ist nah genug.",
  side: "Aufgenommen von",
  front: "vorn",
  back: "hinten",
  shape: "Das Fotografierte liegt",
  disc: "flach, in einer Schicht",
  core: "auf einer Kugel in der Mitte",
  depth: "Nach vorn",
  patch: "Das Spiegelbild der Lampe entfernen",
  patched: (share) =>
    `${share} der Fläche war das Spiegelbild einer Lampe: aus der Umgebung gefüllt, hier umrandet.`,
  patchedNone: "Kein Spiegelbild einer Lampe gefunden.",
  photograph: "Foto",
  traced: "Durchgerechnet, mit ihm im Inneren",
  tracing: "Wird gerechnet ...",
  put: "Einsetzen",
  isInside: "Es ist jetzt im Inneren.",
  full: (why) => `Der Plan kann es nicht aufnehmen: ${why}`,
};
