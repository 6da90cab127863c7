/** Wörter darüber, eine Datei an die Programme des Geräts weiterzugeben. */
import type { send as en } from "../en/send.ts";
import type { Translated } from "../language.ts";

export const send: Translated<typeof en> = {
  send: "Weitergeben",
  notSent: (why) => `Das ließ sich nicht weitergeben: ${why}`,
};
