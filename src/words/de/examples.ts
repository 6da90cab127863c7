import type { examples as en } from "../en/examples.ts";
import type { Translated } from "../language.ts";
import { firstExample } from "./first-example.ts";

export const examples: Translated<typeof en> = {
  ...firstExample,
  "First ring": "Erster Ring",
  "One ring of twelve. Good for learning how hard to lean and when to stop.":
    "Ein Ring aus zwölf. Gut, um zu lernen, wie fest man drückt und wann man aufhört.",
  Ring: "Kranz",
  Skylight: "Oberlicht",
  "A window on top to look in through, and eight facets that lean against it.":
    "Ein Fenster oben zum Hineinsehen und acht Facetten, die sich daran lehnen.",
  Window: "Fenster",
  "Leaning ring": "Angelehnter Ring",
  "Rain barrel": "Regentonne",
  "Staves around the waist that share edges, the two ends left round to roll the light.":
    "Dauben um den Bauch mit gemeinsamen Kanten, die beiden Enden bleiben rund und rollen das Licht.",
  Staves: "Dauben",
  Coffer: "Kästchen",
  "Six windows, square to each other: four around, one on top, one below.":
    "Sechs Fenster im rechten Winkel: vier ringsum, eines oben, eines unten.",
  Walls: "Wände",
  Lid: "Deckel",
  Floor: "Boden",
  "Three steps up": "Drei Stufen hinauf",
  "Three rings of sixteen, each to the corners of the one below, and a top that closes them.":
    "Drei Ringe aus sechzehn, jeder bis in die Ecken des unteren, und eine Kuppe, die sie schließt.",
  "Low ring": "Unterer Ring",
  "Middle ring": "Mittlerer Ring",
  "High ring": "Oberer Ring",
  Top: "Kuppe",
  "Dew on a dome": "Tau auf der Kuppel",
  "Round mirrors that never meet: rings set apart on purpose, skin left between them like a net.":
    "Runde Spiegel, die sich nie treffen: Ringe mit Absicht auf Abstand, dazwischen Haut wie ein Netz.",
  "Lowest row": "Unterste Reihe",
  "Middle row": "Mittlere Reihe",
  "Upper row": "Obere Reihe",
  Cap: "Kappe",
};
