/** How an abrasive's grains are held: one record a kind, from which file, bench and screen take what they list and reckon. */

interface BondRecord {
  /** How deep the damage goes that it leaves where a stage doesn't state it, as counts of the grain's size. */
  readonly damageGrains: number;
}

/**
 * Loose: 2 to 3 grain diameters (AmeriCOM course "The fundamentals of grinding", lesson 2). Bonded: measured depths under bound
 * abrasives lie between 0.3 L^0.68 and 2 L^0.85 um for grains of L um (Lambropoulos 2000, From abrasive size to subsurface damage
 * in grinding; from memory); the deeper bound is one grain at L = 100 um, 1.3 grains at 15 um. Pad: common practice, no source.
 */
export const BONDS = {
  /** on a plate, in water or slurry */
  loose: { damageGrains: 2.5 },
  /** fixed in metal or resin */
  bonded: { damageGrains: 1 },
  /** carried by a soft pad */
  pad: { damageGrains: 0.5 },
} as const satisfies Readonly<Record<string, BondRecord>>;

export type Bond = keyof typeof BONDS;
export const BOND_KINDS = Object.keys(BONDS) as readonly Bond[];
