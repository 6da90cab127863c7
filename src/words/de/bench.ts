import type { bench as en } from "../en/bench.ts";
import type { Translated } from "../language.ts";
import { asCut } from "./bench/as-cut.ts";
import { paper } from "./bench/paper.ts";
import { setUp } from "./bench/set-up.ts";
import { tolerance } from "./bench/tolerance.ts";
import { work } from "./bench/work.ts";
import { cautions } from "./cautions.ts";
import { names } from "./names.ts";

export const bench: Translated<typeof en> = {
  partsLabel: "Teile der Werkbank",
  parts: {
    "set-up": "Einrichten",
    work: "Arbeit",
    tolerance: "Toleranz",
    "as-cut": "Gemessen",
    paper: "Auf Papier",
    price: "Preis",
  },
  toLap: "An die Scheibe",
  unnamed: "Plan ohne Namen",
  tierNumber: names.tier,
  facetOf: (tier, k) => `${tier}, Facette ${k}`,
  noTiers: "Noch gibt es nichts zu schleifen. Leg unter Plan eine erste Reihe an.",
  counting: "Wird ausgerechnet",
  failed:
    "Die Werkbank ließ sich nicht ausrechnen. Dein Plan ist sicher; ändere etwas daran oder lade die Seite neu.",
  notMeasured: "–",
  anyAngle: "jeder Winkel in Grad",
  takeCare: "Gib acht",
  cautions,
  ...setUp,
  ...work,
  ...tolerance,
  ...asCut,
  ...paper,
};
