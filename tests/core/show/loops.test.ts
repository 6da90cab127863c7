import { expect, it } from "vitest";
import { loopPictures } from "../../../src/core/show/loops.ts";

it("turns once, evenly, and ends a step before it began", () => {
  const turn = loopPictures("turn", 8, 3);
  expect(turn.map(({ turnDeg }) => turnDeg)).toEqual([0, 45, 90, 135, 180, 225, 270, 315]);
  expect(turn.every(({ cut }) => cut === null)).toBe(true);
});

it("walks past to either side and back, beginning in front", () => {
  const walk = loopPictures("walk", 4, 3).map(({ turnDeg }) => Math.round(turnDeg));
  expect(walk).toEqual([0, 40, 0, -40]);
});

it("shows the work from the uncut ball, tier by tier, each as long, and the finished piece for a third", () => {
  const cut = loopPictures("work", 12, 3).map((picture) => picture.cut);
  expect(cut).toEqual([0, 0, 1, 1, 2, 2, 3, 3, null, null, null, null]);
  expect(loopPictures("work", 3, 0).map((picture) => picture.cut)).toEqual([0, 0, null]);
});
