/** What is thrown when the solid's own check finds that doubles could not tell how planes meet: an error, never a number. */

/** Which of the solid's laws was broken; a key for words, not a sentence. */
export type CutLaw =
  /** A facet would have to be convex and is met by a plane in more than one line. */
  | "one-line"
  /** A new facet's edges and arcs do not make one ring. */
  | "one-ring"
  /** An edge is not in exactly two outlines with the same ends. */
  | "two-sides"
  /** A loop of skin does not close. */
  | "closed-skin"
  /** V - E + F is not that of a body without holes. */
  | "euler"
  /** A part of the body lies beyond a plane that should have cut it off. */
  | "beyond"
  /** An area or a volume is below 0 or above the ball's. */
  | "size"
  /** What the surface sends out from the centre is not 4 pi (Gauss's law). */
  | "flux";

export class InexactCut extends Error {
  readonly law: CutLaw;
  constructor(law: CutLaw) {
    super(law);
    this.name = "InexactCut";
    this.law = law;
  }
}

/** What `ask` says; null for a cut that can't be reckoned exactly: among many that are tried, one that is no answer. */
export function unlessInexact<T>(ask: () => T): T | null {
  try {
    return ask();
  } catch (error) {
    if (error instanceof InexactCut) return null;
    throw error;
  }
}
