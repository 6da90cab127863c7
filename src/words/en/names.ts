/** What a tier without a name, and a facet, are called. */
export const names = {
  tier: (place: number | string) => `Tier ${place}`,
  facet: (tier: string, place: string) => `Facet ${place} of ${tier}`,
} as const;
