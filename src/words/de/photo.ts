/** Wörter für das Foto der eigenen Murmel. */
import type { photo as en } from "../en/photo.ts";
import type { Translated } from "../language.ts";

export const photo: Translated<typeof en> = {
  title: "Die eigene Murmel im Inneren",
  intro:
    "Ein Foto der ungeschliffenen Kugel, gerade von vorn, wird zum Inneren: Jede Stelle bekommt die Farbe, die die Kamera dort durch das runde Glas sah. Ein zweites von hinten wird die andere Seite. Wähle sie hier, oder lass sie auf die Seite fallen; sie bleiben auf diesem Gerät und in der Datei des Plans.",
  choose: "Ein Foto wählen, oder zwei",
  another: "Eines von der anderen Seite anfügen",
  tooMany: "Eines von vorn und eines von hinten: Die anderen sind weggelassen.",
  remove: "Dieses herausnehmen",
  fromFront: "Von vorn",
  fromBack: "Von hinten",
  sameSide: "Beide Fotos gelten als von derselben Seite: Ändere eines davon.",
  unreadable: (name) =>
    `${name} lässt sich nicht als Bild lesen. PNG, JPEG und was dieser Browser sonst zeigt, geht.`,
  looking: "Die Kugel wird gesucht ...",
  none: "Kein runder Umriss gefunden. Lege den Kreis selbst auf den Rand der Kugel.",
  tooSmall: (pixels) =>
    `Die Kugel ist nur ${pixels} Pixel groß: zu klein für ein Bild von ihr. Geh näher heran, oder lege den Kreis selbst.`,
  cutOff: "Ein Teil der Kugel liegt außerhalb des Fotos: Was nicht zu sehen ist, bleibt klar.",
  circle: "Der Umriss der Kugel: Verschiebe den Kreis, oder setze seine drei Punkte auf ihren Rand",
  threePoints: "Setze die drei Punkte auf den Rand der Kugel, oder verschiebe den Kreis.",
  across: "Mitte, von links",
  down: "Mitte, von oben",
  radius: "Radius",
  distance: "Kamera zur Kugel",
  distanceHint: "Vom Objektiv zur Mitte der Kugel. Unbekannt: Das Zehnfache des Radius ist nah genug.",
  distanceByLens: (mm) =>
    `Geschätzt nach dem Objektiv (${mm} mm) und danach, wie groß die Kugel im Bild ist; ein beschnittenes Bild braucht deine eigene Angabe.`,
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
  putBoth: "Beide einsetzen",
  isInside: "Es ist jetzt im Inneren.",
  full: (why) => `Der Plan kann es nicht aufnehmen: ${why}`,
};
