/** Depth rules in words. */
import type { RuleWords } from "../rules.ts";

export const rules: RuleWords = {
  touch: {
    name: "until they just touch",
    amount: null,
    tail: "{name}",
    wish: () => "just touch",
  },
  edge: {
    name: "until they share edges of",
    amount: "Shared edge",
    tail: "{name} {amount}",
    wish: (mm) => `share edges of ${mm}`,
  },
  gap: {
    name: "leaving gaps of",
    amount: "Gap",
    tail: "{name} {amount}",
    wish: (mm) => `leave gaps of ${mm}`,
  },
  width: {
    name: "until each is this wide",
    amount: "Width",
    tail: "{name}: {amount}",
    wish: (mm) => `be ${mm} wide`,
  },
  depth: {
    name: "to a depth of",
    amount: "Depth",
    tail: "{name} {amount}",
    wish: (mm) => `be ${mm} deep`,
  },
  close: {
    name: "until they close up to",
    amount: null,
    tail: "{name} {other}",
    wish: (other) => `close up to ${other}`,
  },
  corners: {
    name: "to the corners of",
    amount: null,
    tail: "{name} {other}",
    wish: (other) => `come to the corners of ${other}`,
  },
};
