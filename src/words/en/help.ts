/** Words of the help: what the trade's words mean, and a short way round the bench. */
export const help = {
  intro: "What the words mean, and how a plan comes about.",
  words: "What the words mean",
  what: (term: string) => `What is ${term}?`,
  asks: "The words:",
  terms: {
    tier: {
      name: "a tier",
      text: "Facets cut at one arm angle and one depth, spread round the piece. The arm stays where it is for the whole tier: an angle once left is never found again exactly.",
    },
    arm: {
      name: "an arm angle",
      text: "How far the arm with the dop dips below level. 0° grinds a facet on the equator, 90° a flat at the pole. Lapidaries count from the other end: settings can show that cutting angle instead.",
    },
    stop: {
      name: "a stop",
      text: "A notch of the index wheel. A wheel of 96 turns the piece by 3.75° from stop to stop, and spaces facets evenly only if their number divides 96.",
    },
    depth: {
      name: "depth",
      text: "How far below the round surface a facet's flat lies, measured square to it. You say what the depth is for (just touching, an edge of 2 mm, a width), and it is worked out.",
    },
    meet: {
      name: "a meet",
      text: "Neighbours meet when they share an edge or touch in a point. Where they don't, a strip of round skin is left: a gap, with its width beside it.",
    },
    corner: {
      name: "a corner",
      text: "Three or more facets coming to one point. A filled dot marks it; a dot with a tail says by how much they miss.",
    },
    skin: {
      name: "skin",
      text: "The round surface that is left between facets, smooth as it came from the flame.",
    },
    dop: {
      name: "a dop",
      text: "The rod that the piece is cemented to. Nothing can be ground where it sits, so the back is cut after turning the piece over onto another dop.",
    },
    mark: {
      name: "the ink mark",
      text: "The blue line: a stroke that you draw on the skin before the first cut. By it the piece is turned right again when it has been cemented to another dop. Where it stands is set under Piece and under Set-up.",
    },
    tolerance: {
      name: "tolerance",
      text: "How much you let a meet be off before it counts as a miss: 0.05 mm unless you say otherwise, about the width of a thin hair.",
    },
  },
  pictures: {
    tier: "A ball with one ring of facets.",
    arm: "An arm dipping below level towards the lap.",
    stop: "A wheel with notches, one of them marked.",
    depth: "A half circle with a flat, and the distance from the round to the flat.",
    meet: "Three pairs of facets: sharing an edge, touching, apart.",
    corner: "Three facets coming to one point, and three that just miss.",
    skin: "A ball cut flat in two places; what is left of the round is drawn heavy.",
    dop: "A ball sitting on a rod.",
    mark: "A ball with a short stroke across its waist.",
    tolerance: "Two edges a hair apart.",
  },
  guide: {
    title: "A short way round",
    again: "Show me round the bench",
    next: "Next",
    back: "Back",
    leave: "Leave",
    done: "Done.",
    skip: "Skip",
    close: "Close",
    place: (step: number, all: number) => `${step} of ${all}`,
    steps: {
      turn: {
        title: "Turn the piece",
        text: "Drag the marble with a finger or the mouse. One ring of facets is cut already.",
      },
      read: {
        title: "Read the recipe",
        text: "Each tier is a sentence; under it stands what is true of it. Press the marked one, or a facet on the piece.",
      },
      change: {
        title: "Change an angle",
        text: "Press the marked figure, type 40 and Enter. The facets go on touching: the line above the recipe says so.",
      },
      undo: {
        title: "Take it back",
        text: "Undo brings it back, one step at a time, as far as you like.",
      },
      look: {
        title: "See how it will look",
        text: "Look traces light through the glass: the same piece in a window's light. Go there.",
      },
      bench: {
        title: "Take it to the bench",
        text: "Bench says what arm and wheel need for every facet, and prints a sheet. Go there.",
      },
    },
    end: "That is all. Your own plan begins in the menu, under New plan; it is kept on this device as you work.",
  },
} as const;
