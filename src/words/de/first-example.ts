/** Name und Notiz des Beispiels, mit dem die Seite beginnt. */
import type { firstExample as en } from "../en/first-example.ts";
import type { Translated } from "../language.ts";

export const firstExample: Translated<typeof en> = {
  "Both banks": "Beide Ufer",
  "The same river from two sides: rings that meet at the waist, a table in front, a foot behind.":
    "Derselbe Fluss von zwei Seiten: Ringe, die sich am Bauch treffen, vorn eine Tafel, hinten ein Fuß.",
  Waist: "Bauch",
  Shoulder: "Schulter",
  Collar: "Kragen",
  Crown: "Krone",
  Table: "Tafel",
  Hip: "Hüfte",
  Keel: "Kiel",
  Foot: "Fuß",
};
