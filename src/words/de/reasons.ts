/** Warum eine Tiefenregel nicht zu erfüllen ist. */
import type { ReasonWords } from "../reasons.ts";

export const reasons: ReasonWords = {
  single: () => "eine Facette allein hat keine Nachbarin in ihrer Reihe",
  "same-place": () => "alle ihre Facetten stehen an einer Stelle",
  "already-closer": ({ got }, say) =>
    `ihre Nachbarinnen stehen schon ungeschliffen nur ${say.length(got)} auseinander`,
  "never-shared": () => "ihre Nachbarinnen teilen in keiner Tiefe eine Kante",
  "too-long": ({ got, armAngleDeg, count }, say) =>
    `bei ${say.armAngle(armAngleDeg)} können ${count} Facetten höchstens ${say.length(got)} teilen`,
  "too-wide": ({ got, armAngleDeg, count }, say) =>
    `bei ${say.armAngle(armAngleDeg)} können ${count} Facetten hier höchstens ${say.length(got)} breit werden`,
  covered: () => "frühere Reihen haben alles Glas genommen, auf dem sie stünde",
  "no-corners": ({ other }, say) =>
    `Nachbarinnen in ${say.tier(other)} berühren sich nicht und teilen keine Kanten, also gibt es keine Ecken`,
  "open-below": ({ got, other }, say) =>
    `Nachbarinnen in ${say.tier(other)} stehen ${say.length(got)} auseinander, dazwischen läuft die Haut durch`,
  "ground-away": ({ other }, say) => `von ${say.tier(other)} ist nichts übrig`,
  "stays-open": ({ other }, say) => `zu ${say.tier(other)} hin bleibt in jeder Tiefe runde Haut offen`,
  "nothing-between": ({ other }, say) =>
    `zwischen ihr und ${say.tier(other)} liegt keine runde Haut, also ist nichts zu schließen`,
};
