/** Words of the sheet that makes a page for a customer. */
export const customer = {
  intro:
    "One file that shows the piece in light, to be turned by hand. It opens from a mail or a folder, without a network, and asks for nothing.",
  maker: "Your name",
  caption: "A line or two about it",
  price: "Price, as it is to be read",
  noPrice: "Left empty, the page names no price.",
  recipe: "With the recipe: tiers, counts and angles, and the whole plan",
  noRecipe:
    "Without it the page holds only planes as plain numbers. A shape that can be seen can be measured all the same.",
  make: "Make the page",
  progress: (done: number, of: number) =>
    `Tracing pictures for devices that can't trace light: ${done} of ${of}`,
  cancel: "Stop",
  saved: (file: string, kilobytes: string) => `Saved as ${file}, ${kilobytes} kB`,
  cannot: "This device can't trace light, so the page's pictures can't be made here.",
  vanished: "Nothing is left of the piece, so there is nothing to show.",
  failed: (why: string) => `The page could not be made: ${why}`,
} as const;
