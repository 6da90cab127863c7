/** Everything that is said about safety, for screen, sheet and lap alike; each wording defers to local codes and data sheets. */
import type { CautionWords } from "../cautions.ts";

export const cautions: CautionWords = {
  "wet-only": "Grind wet only, never dry.",
  "dust-and-slurry": "Don't let slurry dry or sweep it dry: glass dust must not get into the air.",
  "polish-data-sheet": "Cerium oxide and other compounds: as their safety data sheets say.",
  "solvent-fire": "Acetone and other solvents: away from flame and sparks, with fresh air.",
  "cement-and-torch": "Cement, epoxy and their release by torch: fumes and flame, as their data sheets say.",
  "heat-cracks":
    "Heat and cool slowly: soda-lime cracks sooner than borosilicate; no cold water on warm glass.",
  "mains-and-water": "Mains power near water only on a residual-current device.",
  "eyes-hair-sleeves": "Eye protection on, hair and sleeves tied back, guards in place.",
  "spinning-lap": "Change discs only with the lap at rest and switched off.",
  "cracked-glass": "Don't grind cracked or stressed glass: it can burst.",
  "local-rules": "Follow local codes, safety data sheets and licensed practice.",
  "paper-by-the-lap": "Hold paper against glass only away from the running lap, with dry hands.",
};
