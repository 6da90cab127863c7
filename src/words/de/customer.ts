/** Wörter des Blatts, das eine Seite für einen Kunden macht. */
import type { customer as en } from "../en/customer.ts";
import type { Translated } from "../language.ts";

export const customer: Translated<typeof en> = {
  intro:
    "Eine einzige Datei, die das Stück im Licht zeigt, von Hand zu drehen. Sie öffnet sich aus einer Mail oder einem Ordner, ohne Netz, und fragt nach nichts. Licht und Tisch sind die der Ansicht.",
  ownLight:
    "Das Bild, das es in der Ansicht beleuchtet, ist zu groß, um mitzugehen: Die Seite hat unser Nordfenster.",
  name: "Name des Stücks",
  maker: "Dein Name",
  caption: "Ein, zwei Zeilen dazu",
  price: "Preis, so wie er dastehen soll",
  noPrice: "Leer gelassen, nennt die Seite keinen Preis.",
  recipe: "Mit dem Rezept: Reihen, Anzahlen und Winkel, und dem ganzen Plan",
  noRecipe:
    "Ohne es enthält die Seite nur Ebenen als bloße Zahlen. Eine Form, die man sehen kann, kann man trotzdem messen.",
  mark: "Dein Zeichen",
  markHow: "Ein eigenes Bild, PNG oder SVG: Es steht unter dem Stück und auf Angeboten.",
  chooseMark: "Ein Bild wählen",
  otherMark: "Ein anderes wählen",
  noMark: "Wegnehmen",
  markTooLarge: (file) => `${file} ist zu groß für ein Zeichen: Ein SVG darf 75 kB haben.`,
  markUnreadable: (file) => `${file} lässt sich nicht als Bild lesen.`,
  offerPrice: (price) => `Mit dem Preis von der Werkbank: ${price}`,
  linkTitle: "Als Link",
  linkWhat:
    "Öffnet dieselbe Seite von dieser Adresse, und nichts von der Werkstatt. Er trägt das Stück als bloße Zahlen, nie das Rezept.",
  linkLeaves: "Bilder im Glas und dein Zeichen sind zu lang für einen Link: Die Datei hat sie.",
  linkTooLong: "Dieses Stück hat zu viele Facetten für einen Link. Schick die Datei.",
  address: "Link für einen Kunden",
  copy: "Den Link kopieren",
  copied: "Kopiert",
  notCopied: "Ließ sich nicht kopieren: Markiere ihn und kopiere ihn von Hand.",
  cannotSend:
    "Dieser Browser gibt keine Datei an andere Programme weiter: Sie liegt bei deinen Downloads, von dort zu schicken.",
  see: "Ansehen wie dein Kunde",
  also: "Auch für einen Kunden",
  quote: "Preis und Angebot",
  make: "Seite machen",
  progress: (done, of) => `Bilder für Geräte, die kein Licht verfolgen können: ${done} von ${of}`,
  cancel: "Anhalten",
  saved: (file, kilobytes) => `Gesichert als ${file}, ${kilobytes} kB`,
  cannot: "Dieses Gerät kann kein Licht verfolgen, also lassen sich die Bilder der Seite hier nicht machen.",
  vanished: "Vom Stück ist nichts übrig, also gibt es nichts zu zeigen.",
  failed: (why) => `Die Seite ließ sich nicht machen: ${why}`,
};
