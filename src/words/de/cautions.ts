/** Alles, was zur Sicherheit gesagt wird, für Bildschirm, Blatt und Scheibe; örtliche Vorschriften und Datenblätter gehen vor. */
import type { CautionWords } from "../cautions.ts";

export const cautions: CautionWords = {
  "wet-only": "Nur nass schleifen, nie trocken.",
  "dust-and-slurry": "Schlamm nicht trocknen lassen, nicht trocken fegen: Glasstaub darf nicht in die Luft.",
  "polish-data-sheet": "Ceroxid und andere Mittel: nach ihren Sicherheitsdatenblättern.",
  "solvent-fire": "Aceton und andere Lösemittel: fern von Flammen und Funken, mit Frischluft.",
  "cement-and-torch":
    "Kitt, Epoxid und das Lösen mit dem Brenner: Dämpfe und Flamme, nach den Datenblättern.",
  "heat-cracks":
    "Langsam wärmen und kühlen: Kalknatronglas springt eher als Borosilikatglas; kein kaltes Wasser auf warmes Glas.",
  "mains-and-water": "Netzstrom am Wasser nur über einen Fehlerstrom-Schutzschalter.",
  "eyes-hair-sleeves": "Augenschutz auf, Haare und Ärmel gebunden, Schutzhauben dran.",
  "spinning-lap": "Scheiben nur bei stehender, ausgeschalteter Maschine wechseln.",
  "cracked-glass": "Gesprungenes oder verspanntes Glas nicht schleifen: es kann bersten.",
  "local-rules": "Örtliche Vorschriften, Sicherheitsdatenblätter und die Regeln des Fachs gehen vor.",
  "paper-by-the-lap": "Papier nur fern der laufenden Scheibe und mit trockenen Händen ans Glas halten.",
};
