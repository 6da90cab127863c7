/** Depth rules in words. */
import type { RuleWords } from "../rules.ts";

export const rules: RuleWords = {
  touch: {
    name: "until they just touch",
    tail: "{name}",
    wish: () => "just touch",
    mend: (tier) => `Let ${tier} just touch`,
    snap: () => "just touch",
  },
  edge: {
    name: "until they share edges of",
    amount: "Shared edge",
    tail: "{name} {amount}",
    wish: (mm) => `share edges of ${mm}`,
    mend: (tier, mm) => `Let ${tier} share edges of ${mm}`,
  },
  gap: {
    name: "leaving gaps of",
    amount: "Gap",
    tail: "{name} {amount}",
    wish: (mm) => `leave gaps of ${mm}`,
    mend: (tier, mm) => `Leave gaps of ${mm} in ${tier}`,
  },
  width: {
    name: "until each is this wide",
    amount: "Width",
    tail: "{name}: {amount}",
    wish: (mm) => `be ${mm} wide`,
    mend: (tier, mm) => `Cut ${tier} ${mm} wide`,
  },
  depth: {
    name: "to a depth of",
    amount: "Depth",
    tail: "{name} {amount}",
    wish: (mm) => `be ${mm} deep`,
    mend: (tier, mm) => `Cut ${tier} ${mm} deep`,
  },
  close: {
    name: "until they close up to",
    tail: "{name} {other}",
    wish: (other) => `close up to ${other}`,
    mend: (tier, other) => `Let ${tier} close up to ${other}`,
    snap: (other) => `closes the band to ${other}`,
  },
  corners: {
    name: "to the corners of",
    tail: "{name} {other}",
    wish: (other) => `come to the corners of ${other}`,
    mend: (tier, other) => `Take ${tier} to the corners of ${other}`,
    snap: (other) => `comes to the corners of ${other}`,
  },
};
