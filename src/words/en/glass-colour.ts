/** Words of the colour of the glass: one colour all through, or layers. */
export const glassColour = {
  intro:
    "Glass is coloured by how much of it light goes through: a colour is said with its thickness, and is paler where the glass is thinner.",
  section:
    "The uncut ball held against white, as if light went straight through. Facets bend it, and some of it goes through more glass.",
  outermost: "The glass",
  outermostOfSeveral: "Outermost glass",
  layer: (place: string) => `Layer ${place}`,
  colour: "Colour",
  clear: "Clear",
  own: "Another colour",
  colours: {
    water: "Water",
    seaGreen: "Sea green",
    bottleGreen: "Bottle green",
    moss: "Moss",
    straw: "Straw",
    honey: "Honey",
    tea: "Tea",
    ember: "Ember",
    rose: "Rose",
    plum: "Plum",
    lilac: "Lilac",
    sky: "Sky",
    inkBlue: "Ink blue",
    lagoon: "Lagoon",
    smoke: "Smoke",
  },
  picked: "As seen through",
  pickedHint: (whole: string) => `Set it thinner for a deeper colour. The piece is ${whole} thick.`,
  mix: "Mix your own",
  within: "Diameter of this layer",
  covers: "This layer is as wide as the piece: nothing is left of the glass over it.",
  hidden: "Another layer is as wide as this one: nothing is seen of it.",
  addLayer: "Add a layer beneath",
  removeLayer: (place: string) => `Take out layer ${place}`,
  straight:
    "Layers bend light alike: only their colour parts them. All of them count as the glass chosen for the piece.",
  flame: {
    title: "As the flame left it",
    intro:
      "Seen in Look and in pictures. The drawing of the piece and all numbers stay those of a round ball.",
    wavy: "The round skin sways a little",
    slope: "How steeply",
    across: "From crest to crest",
    another: "Other waves",
  },
} as const;
