import type { controls as en } from "../en/controls.ts";
import type { Translated } from "../language.ts";

export const controls: Translated<typeof en> = {
  between: (least, most, unit) => `${least} bis ${most} ${unit}`.trim(),
  anyNumber: "jede Zahl",
  notAllowed: (allowed) => `Geht nicht. Erlaubt: ${allowed}`,
};
