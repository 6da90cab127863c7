/** Words of the sheet that makes a page for a customer. */
export const customer = {
  intro:
    "One file that shows the piece in light, to be turned by hand. It opens from a mail or a folder, without a network, and asks for nothing. Light and table are those of Look.",
  ownLight: "The picture that lights it in Look is too large to go along: the page has our north window.",
  name: "Name of the piece",
  maker: "Your name",
  caption: "A line or two about it",
  price: "Price, as it is to be read",
  noPrice: "Left empty, the page names no price.",
  recipe: "With the recipe: tiers, counts and angles, and the whole plan",
  noRecipe:
    "Without it the page holds only planes as plain numbers. A shape that can be seen can be measured all the same.",
  mark: "Your mark",
  markHow: "A picture of your own, PNG or SVG: it stands below the piece and on quotes.",
  chooseMark: "Choose a picture",
  otherMark: "Choose another",
  noMark: "Take it away",
  markTooLarge: (file: string) => `${file} is too large for a mark: an SVG may have 75 kB.`,
  markUnreadable: (file: string) => `${file} can't be read as a picture.`,
  offerPrice: (price: string) => `With the price from the bench: ${price}`,
  linkTitle: "As a link",
  linkWhat:
    "Opens the same page from this address, and nothing of the workshop. It carries the piece as plain numbers, never the recipe.",
  linkLeaves: "Pictures inside the glass and your mark are too long for a link: the file has them.",
  linkTooLong: "This piece has too many facets for a link. Send the file.",
  address: "Link for a customer",
  copy: "Copy the link",
  copied: "Copied",
  notCopied: "Could not be copied: mark it and copy it by hand.",
  cannotSend:
    "This browser hands no file to other programs: it lies among your downloads, to be sent from there.",
  see: "See it as your customer does",
  also: "Also for a customer",
  quote: "Price and quote",
  make: "Make the page",
  progress: (done: number, of: number) =>
    `Tracing pictures for devices that can't trace light: ${done} of ${of}`,
  cancel: "Stop",
  saved: (file: string, kilobytes: string) => `Saved as ${file}, ${kilobytes} kB`,
  cannot: "This device can't trace light, so the page's pictures can't be made here.",
  vanished: "Nothing is left of the piece, so there is nothing to show.",
  failed: (why: string) => `The page could not be made: ${why}`,
} as const;
