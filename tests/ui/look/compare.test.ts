/** What is compared and what it is called: another plan, or this one in another glass, finish and light. */
import { expect, it } from "vitest";
import { EXAMPLES, FIRST_EXAMPLE } from "../../../src/ui/examples.ts";
import { packedScenes } from "../../../src/ui/look/look-scene.ts";
import { DEFAULT_SETTINGS } from "../../../src/ui/look/look-settings.ts";
import { variantName } from "../../../src/ui/look/variant-name.ts";
import { lookWords } from "../../../src/ui/messages/look.ts";
import { planWords } from "../../../src/ui/messages/plan.ts";

const alone = (plan = FIRST_EXAMPLE, change = {}) =>
  packedScenes(plan, { ...DEFAULT_SETTINGS, ...change }, { ...DEFAULT_SETTINGS, against: "nothing" })[0];
const compared = (plan: typeof FIRST_EXAMPLE | null) => plan && { id: "shelf", name: "another", plan };
const beside = (
  other: typeof FIRST_EXAMPLE | null,
  otherLook = {},
  own: typeof FIRST_EXAMPLE | null = null,
) =>
  packedScenes(FIRST_EXAMPLE, DEFAULT_SETTINGS, {
    against: "other",
    own: compared(own),
    other: compared(other),
    otherLook,
  });

it("sets this plan in another glass, finish or light beside itself, all else the same", () => {
  for (const look of [{ glass: "soda-lime" }, { finish: "ground" }, { light: "one-lamp" }, {}]) {
    const [own, other] = beside(null, look);
    expect(own).toEqual(alone());
    expect(other).toEqual(alone(FIRST_EXAMPLE, look));
  }
  expect(beside(null, { glass: "soda-lime" })[1]).not.toEqual(alone());
});

it("takes what was set back to the same as the picture beside it", () => {
  expect(beside(null, { glass: undefined, finish: undefined, light: undefined })[1]).toEqual(alone());
});

it("sets another plan beside it", () => {
  expect(beside(EXAMPLES[0])[1]).toEqual(alone(EXAMPLES[0]));
});

it("sets any two side by side, also where neither is on the bench, and only then", () => {
  const [left, right] = beside(EXAMPLES[0], {}, EXAMPLES[1]);
  expect(left).toEqual(alone(EXAMPLES[1]));
  expect(right).toEqual(alone(EXAMPLES[0]));
  const own = compared(EXAMPLES[1]);
  const [ball] = packedScenes(FIRST_EXAMPLE, DEFAULT_SETTINGS, {
    ...DEFAULT_SETTINGS,
    against: "uncut",
    own,
  });
  expect(ball).toEqual(alone());
});

it("names a variant by what of it is not as planned or usual", () => {
  const words = { look: lookWords.en, glasses: planWords.en.piece.glasses, language: "en" as const };
  expect(variantName("Ridge", {}, words)).toBe("Ridge");
  expect(variantName("Ridge", { glass: "soda-lime", finish: "ground" }, words)).toBe(
    `Ridge, ${words.glasses["soda-lime"]}, all ground`,
  );
  expect(variantName("Ridge", { light: "picture" }, words, "yard.hdr")).toBe("Ridge, yard.hdr");
});
