/** Words that fields say about themselves. */
export const controls = {
  between: (least: string, most: string, unit: string) => `${least} to ${most} ${unit}`.trim(),
  notAllowed: (allowed: string) => `Can't be used. Allowed: ${allowed}`,
  text: { required: "Needs a name" },
} as const;
