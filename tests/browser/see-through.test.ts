/** What the shader lets through to the page behind, and its lens, are held to what the twin says of the same scenes and views. */
import { describe, expect, it } from "vitest";
import {
  ALL_SEEN,
  BLURRED,
  keptSeen,
  SEEN_SIZE,
  type Seen,
  SHARP,
  sceneNumber,
  seenParts,
  THROUGH,
  twinParts,
} from "./seen-through.ts";
import { sharedThing } from "./shared.ts";
import { openPage } from "./support.ts";

/** How far the means of parts may be apart: noise of both. */
const NEAR = 0.035;
/**
 * Pixels that the shader traces for each of the twin's, across and down: a light map costs as much for a small picture, and each
 * sample of the picture asks for more of it.
 */
const [FINER, SAMPLES] = [4, 8];

const opened = sharedThing(
  async () => {
    const open = await openPage("tests/browser/look-page.html");
    await open.page.waitForFunction("'traceScene' in window");
    return open;
  },
  ({ close }) => close(),
  ({ errors }) => expect(errors).toEqual([]),
);

async function ofShader(seen: Seen): Promise<number[]> {
  const size = FINER * SEEN_SIZE;
  const { behind, lens } = seen;
  const wish = { size, of: size, into: SEEN_SIZE, seed: 5, samples: SAMPLES, behind, lens };
  const halves = await opened().page.evaluate<number[][]>(
    `traceHalves(${sceneNumber(seen)}, ${JSON.stringify(wish)})`,
  );
  // rows begin at the bottom there
  const row = 4 * SEEN_SIZE;
  const rgba = halves[0].map((_, i) => {
    const at = row * (SEEN_SIZE - 1 - Math.floor(i / row)) + (i % row);
    const v = (halves[0][at] + halves[1][at]) / 2;
    // the twin holds each pixel's alpha, which noise takes beyond, within 0 .. 1
    return i % 4 === 3 ? Math.max(0, Math.min(1, v)) : v;
  });
  return seenParts(rgba);
}

function expectSame(ours: readonly number[], theirs: readonly number[]): void {
  ours.forEach((value, i) => {
    const level = i % 4 === 3 ? 1 : 1 + theirs[i];
    expect(Math.abs(value - theirs[i]) / level, `number ${i % 4} of part ${i >> 2}`).toBeLessThan(NEAR);
  });
}

describe("the page behind, seen through the glass", () => {
  it.each(THROUGH.map((seen) => [seen.scene, seen] as const))(
    "shows as much as the twin says: %s",
    async (_, seen) => {
      const theirs = keptSeen(seen);
      // in the middle the glass is neither away nor a wall
      const alphas = theirs.filter((_, i) => i % 4 === 3);
      expect(Math.max(...alphas) - Math.min(...alphas)).toBeGreaterThan(4 * NEAR);
      expectSame(await ofShader(seen), theirs);
    },
  );
});

describe("a lens", () => {
  it("blurs what the twin's blurs, as far", async () => {
    const theirs = keptSeen(BLURRED);
    expectSame(await ofShader(BLURRED), theirs);
    expect(Math.max(...keptSeen(SHARP).map((v, i) => Math.abs(v - theirs[i])))).toBeGreaterThan(2 * NEAR);
  });
});

describe("what was kept", () => {
  it.each(ALL_SEEN.map((seen) => [`${seen.scene}, ${seen.behind}`, seen] as const))(
    "is what the twin says: %s",
    (_, seen) => {
      expectSame(twinParts(seen, 128, 7), keptSeen(seen));
    },
  );
});
