import { describe, expect, it } from "vitest";
import { Accumulator, type Showable } from "../../src/render/accumulator.ts";
import { COLOURED_SKETCHES } from "../../src/render/pass.ts";
import { anyContext } from "./any-context.ts";

function gathering(sketches: number): Accumulator {
  const picture = new Accumulator(anyContext(), 4, 4);
  picture.restart(sketches);
  return picture;
}

/** Makes what shows, as the engine does before it shows a picture. */
function resolve(picture: Accumulator): Showable | null {
  const now = picture.overdue;
  if (now) picture.resolved(now);
  return now;
}

/** So many passes of a picture: after which it was made anew, of how many samples in each half and whether smoothed (1); and its samples after each. */
function gathered(picture: Accumulator, passes: number) {
  const shown: (readonly number[])[] = [];
  const samples: number[] = [];
  for (let pass = 1; pass <= passes; pass++) {
    picture.endPass();
    samples.push(picture.samples);
    const now = resolve(picture);
    if (now) shown.push([pass, ...now.halves.map((half) => half.samples), now.smoothed ? 1 : 0]);
  }
  return { shown, samples };
}

describe("a gathering picture", () => {
  it.each([0, 1, 4])(
    "draws to what it neither adds to nor guesses from (passes of a sketch: %i)",
    (sketches) => {
      const picture = gathering(sketches);
      for (let pass = 0; pass < 40; pass++) {
        const { front, guess, back } = picture;
        expect(front).not.toBe(guess);
        picture.endPass();
        // What was drawn to is now one of the halves; the other half is as it was.
        expect(picture.back).not.toBe(back);
        expect([picture.front, picture.guess]).toContain(guess);
        expect([picture.front, picture.guess]).not.toContain(front);
      }
    },
  );

  it("guesses from the sketch during the first ray, then from the other half as it stood when the ray began", () => {
    const picture = gathering(1);
    const before = [picture.front, picture.guess];
    picture.endPass();
    expect(before).not.toContain(picture.guess);
    for (let ray = 0; ray < 6; ray++) {
      const guess = picture.guess;
      for (let wave = 0; wave < 4; wave++) {
        expect(picture.guess).toBe(guess);
        picture.endPass();
        expect(picture.samples).toBe(4 * ray + wave + 1);
      }
    }
  });

  it("shows the sketch until the first ray is whole, and then whole rays, each once", () => {
    const picture = gathering(1);
    const shown = Array.from({ length: 9 }, () => {
      picture.endPass();
      const now = resolve(picture);
      // nothing is made of it a second time
      expect(picture.overdue).toBeNull();
      return now && { samples: now.halves.map(({ samples }) => samples), smoothed: now.smoothed };
    });
    const nothing = [null, null, null];
    expect(shown).toEqual([
      { samples: [0, 1], smoothed: false },
      ...nothing,
      { samples: [4, 0], smoothed: false },
      ...nothing,
      { samples: [4, 4], smoothed: true },
    ]);
  });

  it("shows a sketch of several rays as they come, and then that until as many rays have all their wavelengths", () => {
    const picture = gathering(4);
    const { shown, samples } = gathered(picture, 20);
    expect(shown).toEqual([
      [1, 0, 1, 0],
      [2, 1, 1, 1],
      [4, 2, 2, 1],
      [20, 8, 8, 1],
    ]);
    expect(samples.slice(0, 9)).toEqual([1, 2, 3, 4, 4, 4, 4, 4, 5]);
  });

  it("shows a coloured sketch again when both halves have gained a colour, and then that until what follows is nearer", () => {
    const picture = gathering(0);
    picture.restart(COLOURED_SKETCHES, true);
    const { shown, samples } = gathered(picture, COLOURED_SKETCHES + 32);
    expect(shown).toEqual([
      [1, 0, 1, 0],
      [2, 1, 1, 1],
      [4, 1, 1, 1],
      [6, 1, 1, 1],
      [22, 8, 8, 1],
      [38, 16, 16, 1],
    ]);
    expect(samples.slice(0, 14)).toEqual([1, 2, 3, 4, 5, 6, 6, 6, 6, 6, 6, 6, 7, 8]);
    // a picture begun anew has what it is told to
    picture.restart(4);
    expect(picture.isColoured).toBe(false);
  });

  it("shows what is left of a sketch, or whole rays, where nothing of it has been shown", () => {
    for (const [passes, halves] of [
      [5, [0, 2]],
      [8, [4, 0]],
      [9, [4, 1]],
    ] as const) {
      const picture = gathering(4);
      for (let pass = 0; pass < passes; pass++) picture.endPass();
      expect(resolve(picture)?.halves.map(({ samples }) => samples)).toEqual(halves);
    }
  });

  it("shows what there is, though no ray is whole, where nothing has been shown before", () => {
    for (const passes of [3, 7, 12]) {
      const picture = gathering(1);
      for (let pass = 0; pass < passes; pass++) picture.endPass();
      expect(resolve(picture)).not.toBeNull();
    }
  });

  it("shows the sketch of a picture begun anew", () => {
    const picture = gathering(1);
    for (let begun = 0; begun < 2; begun++) {
      picture.endPass();
      expect(resolve(picture)?.halves.map(({ samples }) => samples)).toEqual([0, 1]);
      picture.restart(1);
    }
  });

  it.each([
    [1, [8, 16, 32, 64, 128]],
    [4, [2, 4, 16, 32, 64, 128]],
    [0, [2, 4, 8, 16, 32, 64, 128]],
  ])(
    "smooths when both halves have as much, each time with twice the samples (passes of a sketch: %i)",
    (sketches, at) => {
      const picture = gathering(sketches);
      const smoothedAt: number[] = [];
      while (picture.samples < 200) {
        picture.endPass();
        const now = resolve(picture);
        if (!now?.smoothed) continue;
        expect(now.halves[0].samples).toBe(now.halves[1].samples);
        smoothedAt.push(picture.samples);
      }
      expect(smoothedAt).toEqual(at);
    },
  );

  it("never puts a noisier picture in the place of a smoothed one", () => {
    const picture = gathering(1);
    while (picture.samples < 8 || picture.passes < 9) picture.endPass();
    expect(resolve(picture)?.smoothed).toBe(true);
    for (let pass = 0; pass < 7; pass++) {
      picture.endPass();
      expect(resolve(picture)).toBeNull();
    }
  });

  it("keeps what shows until a pass of the new picture is whole, and then shows that", () => {
    const picture = gathering(0);
    for (let pass = 0; pass < 8; pass++) picture.endPass();
    resolve(picture);
    const { samples } = picture;
    picture.restart(1);
    expect(picture.overdue).toBeNull();
    expect(picture.samples).toBe(samples);
    picture.endPass();
    expect(resolve(picture)?.halves.map((half) => half.samples)).toEqual([0, 1]);
  });
});
