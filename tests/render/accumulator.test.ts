import { describe, expect, it } from "vitest";
import { Accumulator } from "../../src/render/accumulator.ts";
import { anyContext } from "./any-context.ts";

describe("the running sum", () => {
  it("draws to what it neither shows nor guesses from", () => {
    const sum = new Accumulator(anyContext(), 4, 4);
    sum.restart(true);
    for (let pass = 0; pass < 20; pass++) {
      const [front, guess] = [sum.front, sum.guess];
      const { back } = sum;
      sum.endPass();
      expect(sum.front).not.toBe(front);
      expect(sum.front).not.toBe(guess);
      expect(sum.back).not.toBe(back);
    }
  });

  it("guesses from the sketch until a ray has all its wavelengths, then from the last whole ray", () => {
    const sum = new Accumulator(anyContext(), 4, 4);
    sum.restart(true);
    sum.endPass();
    let whole = sum.front;
    for (let sample = 1; sample <= 16; sample++) {
      sum.endPass();
      if (sample % 4 === 0) whole = sum.front;
      expect(sum.guess).toBe(whole);
      expect(sum.samples).toBe(sample);
    }
  });

  it("shows the sketch until the first ray is whole, and every sample from then on", () => {
    const sum = new Accumulator(anyContext(), 4, 4);
    sum.restart(true);
    sum.endPass();
    const sketch = sum.front;
    for (let sample = 1; sample < 4; sample++) {
      sum.endPass();
      expect(sum.shown).toEqual({ texture: sketch, samples: 1 });
      expect(sum.shown.texture).toBe(sketch);
    }
    for (let sample = 4; sample < 9; sample++) {
      sum.endPass();
      expect(sum.shown.texture).toBe(sum.front);
      expect(sum.shown.samples).toBe(sample);
    }
  });

  it("keeps showing the picture from before until a new pass is whole", () => {
    const sum = new Accumulator(anyContext(), 4, 4);
    sum.restart(false);
    for (let pass = 0; pass < 5; pass++) sum.endPass();
    const before = sum.shown;
    sum.restart(true);
    expect(sum.shown).toEqual(before);
    expect(sum.shown.texture).toBe(before.texture);
  });
});
