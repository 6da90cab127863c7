/** Words of the page that a customer gets. */
export const show = {
  hint: "Turn it: drag with a finger or the mouse, or use the arrow keys.",
  piece: (name: string) => `${name}, to be turned`,
  turnedBy: (degrees: string) => `turned by ${degrees} degrees`,
  turn: "Let it turn",
  stop: "Hold it still",
  light: "Move the light",
  uncut: "Beside the uncut ball",
  coin: (mm: string, inch: string) => `${mm} mm (${inch} in) across, beside a coin of one euro (23.25 mm).`,
  hand: (mm: string, inch: string) =>
    `${mm} mm (${inch} in) across, beside a grown-up's hand (about 185 mm long).`,
  by: (maker: string) => `by ${maker}`,
  pictures: "Light can't be traced on this device, so these are pictures made beforehand.",
  drawing: "Light can't be traced on this device, so this is a drawing of its facets.",
  stillOnly: "This picture was made beforehand. With scripts allowed the piece can be turned.",
  measured:
    "The glass is not ground yet: this is how it will look, traced from its plan. A shape that can be seen can be measured.",
  recipe: "How it is cut",
  recipeFacets: (tier: string, facets: string, side: string, angle: string, start: string, depth: string) =>
    `${tier}: ${facets} on the ${side} at ${angle}°, the first at ${start}°, ${depth} mm deep.`,
  facets: { one: "1 facet", other: (count: string) => `${count} facets` },
  front: "front",
  back: "back",
} as const;
