/** What is thrown in place of a mesh that is not sound: a model is whole or not written. */

/** The law that was broken. */
export type MeshFault = "open" | "not-one-surface" | "volume" | "surface" | "skin";

/** A plan that leaves nothing of the piece: there is no model to make. */
export class NothingLeft extends RangeError {
  override readonly name = "NothingLeft";
}

export class BrokenMesh extends Error {
  readonly fault: MeshFault;
  constructor(fault: MeshFault) {
    super(fault);
    this.name = "BrokenMesh";
    this.fault = fault;
  }
}
