/**
 * The one place for small numbers. Two words that are never mixed:
 * - **epsilon**: what the arithmetic of doubles causes, on the unit sphere. A person never sees it.
 * - **tolerance**: what the person permits, in millimetres, chosen in the plan.
 */

/** Unit-sphere lengths closer than this are one place: about 1e4 roundings of a double, 1.5e-11 mm on a 30 mm piece. */
export const EPSILON = 1e-12;
/** Planes whose unit normals and distances both differ by less than this are one plane (15 nm on a 30 mm piece). */
export const COINCIDENT = 1e-9;
/** Vertices of an outline closer than this are one vertex (1.5e-8 mm on a 30 mm piece). */
export const SAME_PLACE = 1e-9;
/** A place this near to a plane lies on it: what solved depths and three rounded planes can differ by. */
export const ON_PLANE = 1e-11;
/** Wider ones, tried in turn where the usual one leads to a contradiction. The widest is SAME_PLACE. */
export const WIDER_ON_PLANE = [1e-10, SAME_PLACE] as const;
/** Circles whose common chord has half its length squared below this only touch: no chord is made. */
export const TANGENT = 1e-12;
/** How far sums over a whole solid may be from what they must be: 1000 facets' roundings, with room. */
export const CHECK_SUM = 1e-7;
/** Brackets of depth solvers close to this on the unit sphere (1e-9 mm is promised up to 300 mm). */
export const SOLVE_EPSILON = 1e-13;
/** Tolerance of a plan that names none, mm. Common practice, no source. */
export const DEFAULT_TOLERANCE_MM = 0.05;
