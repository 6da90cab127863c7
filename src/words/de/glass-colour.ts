import type { glassColour as en } from "../en/glass-colour.ts";
import type { Translated } from "../language.ts";

export const glassColour: Translated<typeof en> = {
  intro:
    "Glas färbt danach, durch wie viel davon das Licht geht: Zu einer Farbe gehört ihre Dicke, und wo das Glas dünner ist, ist sie blasser.",
  section:
    "Die ungeschliffene Kugel vor Weiß, als ginge das Licht gerade hindurch. Facetten lenken es ab, und manches geht durch mehr Glas.",
  outermost: "Das Glas",
  outermostOfSeveral: "Äußerstes Glas",
  layer: (place) => `Schicht ${place}`,
  colour: "Farbe",
  clear: "Klar",
  own: "Eine andere Farbe",
  colours: {
    water: "Wasser",
    seaGreen: "Seegrün",
    bottleGreen: "Flaschengrün",
    moss: "Moos",
    straw: "Stroh",
    honey: "Honig",
    tea: "Tee",
    ember: "Glut",
    rose: "Rosé",
    plum: "Pflaume",
    lilac: "Flieder",
    sky: "Himmel",
    inkBlue: "Tintenblau",
    lagoon: "Lagune",
    smoke: "Rauch",
  },
  picked: "So gesehen durch",
  pickedHint: (whole) => `Dünner gesetzt wird die Farbe tiefer. Das Stück ist ${whole} dick.`,
  mix: "Selbst mischen",
  within: "Durchmesser dieser Schicht",
  covers: "Diese Schicht ist so breit wie das Stück: Vom Glas darüber bleibt nichts.",
  hidden: "Eine andere Schicht ist so breit wie diese: Von ihr ist nichts zu sehen.",
  addLayer: "Eine Schicht darunter anfügen",
  removeLayer: (place) => `Schicht ${place} herausnehmen`,
  flame: {
    title: "Wie die Flamme es ließ",
    intro:
      "Zu sehen in der Ansicht und in Bildern. Die Zeichnung des Stücks und alle Zahlen bleiben die einer runden Kugel.",
    wavy: "Die runde Haut ist leicht wellig",
    slope: "Wie steil",
    across: "Von Kamm zu Kamm",
    another: "Andere Wellen",
    seeds: "Winzige Blasen im ganzen Glas",
    count: "Wie viele",
    wide: "Wie breit",
    otherSeeds: "Neu streuen",
  },
  straight:
    "Schichten brechen das Licht alle gleich: Nur ihre Farbe trennt sie. Alle gelten als das Glas, das für das Stück gewählt ist.",
};
