import { describe, expect, it } from "vitest";
import { asideOf } from "../../../src/ui/piece/labels.ts";

describe("a name beside a place on the piece", () => {
  const [wide, pictureWide] = [74, 272];

  it("stands at the right where there is room", () => {
    expect(asideOf(100, wide, pictureWide)).toBe(0);
  });

  it("never leaves the picture, wherever the place is", () => {
    for (let x = 90; x <= pictureWide; x++) {
      // the style puts it 12 px to the right of the place
      const left = x + 12 + asideOf(x, wide, pictureWide);
      expect(left).toBeGreaterThanOrEqual(0);
      expect(left + wide).toBeLessThanOrEqual(pictureWide);
      // and never over the place itself
      expect(left >= x || left + wide <= x).toBe(true);
    }
  });
});
