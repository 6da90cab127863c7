/** Wörter des Blatts, das eine Seite für einen Kunden macht. */
import type { customer as en } from "../en/customer.ts";
import type { Translated } from "../language.ts";

export const customer: Translated<typeof en> = {
  intro:
    "Eine einzige Datei, die das Stück im Licht zeigt, von Hand zu drehen. Sie öffnet sich aus einer Mail oder einem Ordner, ohne Netz, und fragt nach nichts.",
  maker: "Dein Name",
  caption: "Ein, zwei Zeilen dazu",
  price: "Preis, so wie er dastehen soll",
  noPrice: "Leer gelassen, nennt die Seite keinen Preis.",
  recipe: "Mit dem Rezept: Reihen, Anzahlen und Winkel, und dem ganzen Plan",
  noRecipe:
    "Ohne es enthält die Seite nur Ebenen als bloße Zahlen. Eine Form, die man sehen kann, kann man trotzdem messen.",
  make: "Seite machen",
  progress: (done, of) => `Bilder für Geräte, die kein Licht verfolgen können: ${done} von ${of}`,
  cancel: "Anhalten",
  saved: (file, kilobytes) => `Gesichert als ${file}, ${kilobytes} kB`,
  cannot: "Dieses Gerät kann kein Licht verfolgen, also lassen sich die Bilder der Seite hier nicht machen.",
  vanished: "Vom Stück ist nichts übrig, also gibt es nichts zu zeigen.",
  failed: (why) => `Die Seite ließ sich nicht machen: ${why}`,
};
