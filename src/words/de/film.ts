/** Wörter des Films und des Bogens mit Varianten. */
import type { film as en } from "../en/film.ts";
import type { Translated } from "../language.ts";

export const film: Translated<typeof en> = {
  intro:
    "Eine Schleife des Stücks, so wie die Ansicht es gerade zeigt: ihr Licht, ihre Oberfläche, ihr Glas. Alles entsteht auf diesem Gerät.",
  open: "Einen Film machen",
  loop: "Was er zeigt",
  loops: { turn: "Eine Drehung", walk: "Im Vorbeigehen", work: "Die Arbeit: roh, jede Reihe, fertig" },
  shape: "Für",
  shapes: { shop: "Einen Laden, 4:3", square: "Ein Quadrat", story: "Eine Story, 9:16" },
  size: (wide, high) => `${wide} x ${high} Pixel`,
  length: "Wie lang",
  seconds: (n) => `${n} s`,
  fine: "Wie fein",
  finenesses: { draft: "Entwurf", good: "Gut", best: "Am besten" },
  kinds: {
    mp4: "Er wird eine MP4-Datei (H.264), die Handys, Läden und Chats abspielen.",
    webm: "Dieser Browser macht kein MP4: Er wird eine WebM-Datei, die Browser abspielen und viele Läden nehmen.",
    zip: "Dieser Browser macht keine Filme: Seine Bilder kommen in einer ZIP-Datei, nummeriert, 24 in der Sekunde.",
  },
  make: "Den Film machen",
  progress: (done, of) => `Bild ${done} von ${of}`,
  left: (time) => `noch etwa ${time}`,
  leftSeconds: (s) => `${s} s`,
  leftMinutes: (min) => `${min} Min.`,
  leftHours: (h) => `${h} Std.`,
  stop: "Anhalten",
  picture: "Das zuletzt berechnete Bild",
  preview: "Der Film, immer wieder von vorn",
  save: "Den Film sichern",
  share: "Weitergeben",
  ready: (kind, seconds, megabytes) => `${kind}, ${seconds} s, ${megabytes} MB`,
  failed: (why) => `Der Film ließ sich nicht machen: ${why}`,
  notSent: (why) => `Er ließ sich nicht weitergeben: ${why}`,
  cannot: "Dieses Gerät kann Licht nicht verfolgen, also entsteht hier kein Film.",
  vanished: "Vom Stück bleibt nichts übrig, also gibt es nichts zu filmen.",
  ending: "Film",
};
