import { describe, expect, it } from "vitest";
import { fittedPage, PageTooLarge } from "../../../src/core/show/fit-page.ts";
import { engineFaultInWords } from "../../../src/words/engine-faults.ts";

/** A page of so many bytes for each per cent of its pictures' quality. */
const growing =
  (bytes: number, letter = "a") =>
  (quality: number) =>
    letter.repeat(bytes * quality);

describe("a page stays as small as a mail takes", () => {
  it("has its pictures as fine as there is room for", async () => {
    const asked: number[] = [];
    const page = await fittedPage((quality) => {
      asked.push(quality);
      return growing(15_000)(quality);
    });
    // 15,000 bytes a per cent: 60 per cent would be the limit itself
    expect(page.length).toBe(15_000 * 50);
    expect(asked).toEqual([84, 76, 68, 60, 50]);
    expect((await fittedPage(growing(100))).length).toBe(100 * 84);
  });

  it("counts bytes, not letters", async () => {
    // two bytes each in UTF-8
    expect((await fittedPage(growing(7_500, "ü"))).length).toBe(7_500 * 50);
  });

  it("is refused in words where no coarseness helps", async () => {
    const refused = await fittedPage(() => "a".repeat(1_234_567)).catch((error: unknown) => error);
    expect(refused).toBeInstanceOf(PageTooLarge);
    expect(engineFaultInWords(refused, "en")).toMatch(/1,235 kB.*fewer than 900.*recipe/);
    expect(engineFaultInWords(refused, "de")).toMatch(/1\.235 kB.*weniger als 900.*Rezept/);
  });
});
