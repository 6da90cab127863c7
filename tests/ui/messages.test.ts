/** Words of the shell and the plan: German is complete and German, templates have the same fields. */
import { describe, expect, it } from "vitest";
import { benchWords } from "../../src/ui/messages/bench.ts";
import { cautionWords } from "../../src/ui/messages/cautions.ts";
import { controlWords } from "../../src/ui/messages/controls.ts";
import { drawingWords } from "../../src/ui/messages/drawings.ts";
import { exampleWords } from "../../src/ui/messages/examples.ts";
import { glassColourWords } from "../../src/ui/messages/glass-colour.ts";
import { helpWords } from "../../src/ui/messages/help.ts";
import { historyWords, labelInWords } from "../../src/ui/messages/history.ts";
import { insideWords } from "../../src/ui/messages/inside.ts";
import { lapWords } from "../../src/ui/messages/lap.ts";
import { libraryWords } from "../../src/ui/messages/library.ts";
import { lookWords } from "../../src/ui/messages/look.ts";
import { planWords } from "../../src/ui/messages/plan.ts";
import { ruleWords } from "../../src/ui/messages/rules.ts";
import { settingsWords } from "../../src/ui/messages/settings.ts";
import { shellWords } from "../../src/ui/messages/shell.ts";
import { languageOf } from "../../src/words/language.ts";

type Leaf = readonly [path: string, en: string, de: string];
type Said = (...given: readonly unknown[]) => unknown;
const GIVEN = ["⟨a⟩", "⟨b⟩", "⟨c⟩", "⟨d⟩", "⟨e⟩", "⟨f⟩"];

/** Called with marked words; one that wants a list of them first gets one. */
function called(say: Said): string {
  try {
    return String(say(...GIVEN));
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    return String(say([GIVEN[0], GIVEN[5]], ...GIVEN.slice(1)));
  }
}

/** Both texts of every entry; functions are called with marked words in place of their values. */
function leaves(en: unknown, de: unknown, path = ""): Leaf[] {
  if (typeof en === "string") return [[path, en, String(de)]];
  if (typeof en === "function") return [[path, called(en as Said), called(de as Said)]];
  const [a, b] = [en as Record<string, unknown>, de as Record<string, unknown>];
  expect(Object.keys(b).sort()).toEqual(Object.keys(a).sort());
  return Object.keys(a).flatMap((key) => leaves(a[key], b[key], `${path}.${key}`));
}

const AREAS = {
  shell: shellWords,
  plan: planWords,
  settings: settingsWords,
  controls: controlWords,
  history: historyWords,
  examples: exampleWords,
  bench: benchWords,
  drawings: drawingWords,
  glassColour: glassColourWords,
  inside: insideWords,
  help: helpWords,
  lap: lapWords,
  library: libraryWords,
  look: lookWords,
  rules: ruleWords,
  cautions: cautionWords,
} as const;
/** Words that are the same in both languages. */
const SAME = /^(Glintwright|Plan|English|Deutsch|Alt|Esc|Name|name|Arm|Link|⟨a⟩, ⟨b⟩ in ⟨c⟩)$/;
/** Units that both languages write alike. */
const UNITS = /\b(min|s|h|px)\b/g;
const wordless = (text: string) => text.replace(UNITS, "").replace(/\{\w+\}|⟨\w⟩|[^\p{L}]/gu, "") === "";

describe.each(Object.entries(AREAS))("%s", (_, words) => {
  const all = leaves(words.en, words.de);
  it("says everything in German, in other words than in English", () => {
    const untold = all.filter(
      ([, en, de]) => (en !== "" && de === "") || (en === de && !wordless(en) && !SAME.test(en)),
    );
    expect(untold).toEqual([]);
  });
  it("uses the same fields and values in both languages", () => {
    const fields = (text: string) => (text.match(/\{\w+\}|⟨\w⟩/g) ?? []).sort().join(" ");
    expect(all.filter(([, en, de]) => fields(en) !== fields(de))).toEqual([]);
  });
});

describe("language and labels", () => {
  it("takes the first language asked for that there is, English when there is none", () => {
    expect(languageOf(["fr-FR", "de-AT", "en"])).toBe("de");
    expect(languageOf(["fr"])).toBe("en");
  });
  it("names an undo step as a person would", () => {
    expect(labelInWords({ about: "tier", tier: 2, field: "depth" }, historyWords.en, "en")).toBe(
      "depth of tier 2",
    );
    expect(labelInWords({ about: "tier", tier: 2, field: "depth" }, historyWords.de, "de")).toBe(
      "Tiefe von Reihe 2",
    );
    expect(labelInWords({ about: "piece", field: "diameterMm" }, historyWords.en, "en")).toBe("diameter");
    expect(labelInWords({ about: "rig", field: "unknown" }, historyWords.en, "en")).toBe(
      "the wheel and the arm",
    );
  });
});
