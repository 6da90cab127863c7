/** Tiefenregeln in Worten. */
import type { RuleWords } from "../rules.ts";

export const rules: RuleWords = {
  touch: {
    name: "bis sie sich gerade berühren",
    amount: null,
    tail: "{name}",
    wish: () => "sich gerade berühren",
  },
  edge: {
    name: "bis zu gemeinsamen Kanten von",
    amount: "Gemeinsame Kante",
    tail: "{name} {amount}",
    wish: (mm) => `Kanten von ${mm} teilen`,
  },
  gap: {
    name: "bis auf Lücken von",
    amount: "Lücke",
    tail: "{name} {amount}",
    wish: (mm) => `Lücken von ${mm} lassen`,
  },
  width: {
    name: "bis jede so breit ist",
    amount: "Breite",
    tail: "{name}: {amount}",
    wish: (mm) => `${mm} breit werden`,
  },
  depth: {
    name: "bis zu einer Tiefe von",
    amount: "Tiefe",
    tail: "{name} {amount}",
    wish: (mm) => `${mm} tief werden`,
  },
  close: {
    name: "bis sie anschließen an",
    amount: null,
    tail: "{name} {other}",
    wish: (other) => `an ${other} anschließen`,
  },
  corners: {
    name: "bis in die Ecken von",
    amount: null,
    tail: "{name} {other}",
    wish: (other) => `in die Ecken von ${other} kommen`,
  },
};
