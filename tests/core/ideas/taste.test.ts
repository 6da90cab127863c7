import { describe, expect, it } from "vitest";
import { seeded } from "../../../src/core/bench/chances/chance.ts";
import { FEATURES, LEAST_MARKS, likingOf, type Mark, tasteOf } from "../../../src/core/ideas/taste.ts";

const random = seeded(5);
const features = () => Array.from({ length: FEATURES }, () => random());

describe("a taste", () => {
  it("is not told before there are some of each kind", () => {
    const mark = (isLiked: boolean): Mark => ({ features: features(), isLiked });
    const few = [
      ...Array.from({ length: LEAST_MARKS - 1 }, () => mark(true)),
      mark(false),
      mark(false),
      mark(false),
    ];
    expect(tasteOf([])).toBeNull();
    expect(tasteOf(few)).toBeNull();
    expect(tasteOf([...few, mark(true)])).not.toBeNull();
  });

  it("orders what it has never seen as the person would who held what has much of the fourth and little of the first", () => {
    const truly = (own: readonly number[]) => 2 * own[3] - own[0];
    const marks = Array.from({ length: 60 }, (): Mark => {
      const own = features();
      return { features: own, isLiked: truly(own) > 0.5 };
    });
    const taste = tasteOf(marks) ?? [];
    let [right, all] = [0, 0];
    for (let k = 0; k < 300; k++) {
      const [a, b] = [features(), features()];
      // nearly equal ones may come either way
      if (Math.abs(truly(a) - truly(b)) < 0.2) continue;
      all++;
      if (likingOf(taste, a) > likingOf(taste, b) === truly(a) > truly(b)) right++;
    }
    expect(right / all).toBeGreaterThan(0.93);
  });
});
