/** What is thrown in place of a mesh that is not sound: a model is whole or not written. */

/** The law that was broken. */
export type MeshFault = "open" | "not-one-surface" | "volume" | "surface" | "skin";

const WORDS: Readonly<Record<MeshFault, string>> = {
  open: "its surface would not be closed",
  "not-one-surface": "its surface would not be one whole",
  surface: "it would stand off the facets or the skin",
  volume: "its volume would not be the piece's",
  skin: "the skin left is too narrow to be meshed",
};

export class BrokenMesh extends Error {
  readonly fault: MeshFault;
  constructor(fault: MeshFault) {
    super(`no sound model can be made of this plan: ${WORDS[fault]}`);
    this.name = "BrokenMesh";
    this.fault = fault;
  }
}
