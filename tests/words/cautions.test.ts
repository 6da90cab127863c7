/** What is said about safety stands once: no other words of ours say it again, in words that may drift from it. */
import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { cautions as deutsch } from "../../src/words/de/cautions.ts";
import { cautions as english } from "../../src/words/en/cautions.ts";

/** By what each caution is told, wherever it is said. */
const TELLING = {
  en: {
    "wet-only": /never dry|grind wet/i,
    "dust-and-slurry": /glass dust|slurry/i,
    "polish-data-sheet": /other compounds|data sheet/i,
    "solvent-fire": /acetone|solvent|sparks|fresh air/i,
    "cement-and-torch": /epoxy|torch|fumes/i,
    "heat-cracks": /cold water|warm glass|cool slowly/i,
    "mains-and-water": /mains|residual/i,
    "eyes-hair-sleeves": /eye protection|sleeves|guards/i,
    "spinning-lap": /switched off\.|at rest and/i,
    "cracked-glass": /burst|stressed glass/i,
    "local-rules": /local codes|licensed/i,
    "paper-by-the-lap": /running lap|dry hands/i,
  },
  de: {
    "wet-only": /nie trocken|nass schleifen/i,
    "dust-and-slurry": /glasstaub|schlamm/i,
    "polish-data-sheet": /andere mittel|datenbl/i,
    "solvent-fire": /aceton|lösemittel|funken|frischluft/i,
    "cement-and-torch": /epoxid|brenner|dämpfe/i,
    "heat-cracks": /kaltes wasser|warmes glas|langsam wärmen/i,
    "mains-and-water": /netzstrom|fehlerstrom/i,
    "eyes-hair-sleeves": /augenschutz|ärmel|schutzhaube/i,
    "spinning-lap": /ausgeschaltete/i,
    "cracked-glass": /berst|verspannt/i,
    "local-rules": /örtliche vorschriften|regeln des fachs/i,
    "paper-by-the-lap": /laufenden scheibe|trockenen händen/i,
  },
};

const words = fileURLToPath(new URL("../../src/words/", import.meta.url));

it.each([
  ["en", english, TELLING.en],
  ["de", deutsch, TELLING.de],
] as const)("is said in one place only (%s)", (language, cautions, telling) => {
  const folder = `${words}${language}/`;
  const others = readdirSync(folder, { recursive: true, encoding: "utf8" }).filter(
    (name) => name.endsWith(".ts") && name !== "cautions.ts",
  );
  const again: string[] = [];
  for (const [caution, sign] of Object.entries(telling)) {
    expect(cautions[caution as keyof typeof telling]).toMatch(sign);
    for (const name of others)
      if (sign.test(readFileSync(folder + name, "utf8"))) again.push(`${name}: ${caution}`);
  }
  expect(again).toEqual([]);
  expect(Object.keys(telling)).toEqual(Object.keys(cautions));
});
