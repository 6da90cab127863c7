/** Tiefenregeln in Worten. */
import type { RuleWords } from "../rules.ts";

export const rules: RuleWords = {
  touch: {
    name: "bis sie sich gerade berühren",
    tail: "{name}",
    wish: () => "sich gerade berühren",
    mend: (tier) => `${tier} gerade berühren lassen`,
    snap: () => "berührt gerade",
  },
  edge: {
    name: "bis zu gemeinsamen Kanten von",
    amount: "Gemeinsame Kante",
    tail: "{name} {amount}",
    wish: (mm) => `Kanten von ${mm} teilen`,
    mend: (tier, mm) => `${tier} mit gemeinsamen Kanten von ${mm}`,
  },
  gap: {
    name: "bis auf Lücken von",
    amount: "Lücke",
    tail: "{name} {amount}",
    wish: (mm) => `Lücken von ${mm} lassen`,
    mend: (tier, mm) => `${tier} mit Abständen von ${mm}`,
  },
  width: {
    name: "bis jede so breit ist",
    amount: "Breite",
    tail: "{name}: {amount}",
    wish: (mm) => `${mm} breit werden`,
    mend: (tier, mm) => `${tier} ${mm} breit schleifen`,
  },
  depth: {
    name: "bis zu einer Tiefe von",
    amount: "Tiefe",
    tail: "{name} {amount}",
    wish: (mm) => `${mm} tief werden`,
    mend: (tier, mm) => `${tier} ${mm} tief schleifen`,
  },
  close: {
    name: "bis sie anschließen an",
    tail: "{name} {other}",
    wish: (other) => `an ${other} anschließen`,
    mend: (tier, other) => `${tier} bis an ${other} schließen`,
    snap: (other) => `schließt das Band zu ${other}`,
  },
  corners: {
    name: "bis in die Ecken von",
    tail: "{name} {other}",
    wish: (other) => `in die Ecken von ${other} kommen`,
    mend: (tier, other) => `${tier} zu den Ecken von ${other} führen`,
    snap: (other) => `kommt zu den Ecken von ${other}`,
  },
};
