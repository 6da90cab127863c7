/** What the engine can't do. */
import type { EngineFaultWords } from "../engine-faults.ts";

export const engineFaults: EngineFaultWords = {
  inexact: (law) =>
    `this plan can't be reckoned exactly: its facets meet in a way that doubles can't tell apart (${law})`,
  brokenMesh: (why) => `no sound model can be made of this plan: ${why}`,
  mesh: {
    open: "its surface would not be closed",
    "not-one-surface": "its surface would not be one whole",
    surface: "it would stand off the facets or the skin",
    volume: "its volume would not be the piece's",
    skin: "the skin left is too narrow to be meshed",
  },
  brokenPicture: (id) => `pictures.${id}: the picture is damaged and can't be decoded`,
  nothingLeft: "this plan leaves nothing of the piece, so there is no model to write",
  pageTooLarge: (kilobytes, limit) =>
    `the page would have ${kilobytes} kB with its pictures at their coarsest, and fewer than ${limit} are allowed: leave out the recipe, or take a smaller mark`,
};
