/** Words that fields say about themselves. */
export const controls = {
  between: (least: string, most: string, unit: string) => `${least} to ${most} ${unit}`.trim(),
  anyNumber: "any number",
  notAllowed: (allowed: string) => `Can't be used. Allowed: ${allowed}`,
} as const;
