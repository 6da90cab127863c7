/** Names and notes of the example that the page opens on. */
export const firstExample = {
  "Both banks": "Both banks",
  "The same river from two sides: rings that meet at the waist, a table in front, a foot behind.":
    "The same river from two sides: rings that meet at the waist, a table in front, a foot behind.",
  Waist: "Waist",
  Shoulder: "Shoulder",
  Collar: "Collar",
  Crown: "Crown",
  Table: "Table",
  Hip: "Hip",
  Keel: "Keel",
  Foot: "Foot",
} as const;
