import { expect, it } from "vitest";
import { onGround } from "../../../src/core/show/on-ground.ts";

it("lets the ground through where nothing is and in part where the glass lets it, and hides it where it is opaque", () => {
  // nothing; half of it, white; all of it, black; premultiplied as they are traced
  const rows = Float32Array.from([0, 0, 0, 0, 0.5, 0.5, 0.5, 0.5, 0, 0, 0, 1]);
  const set = onGround(rows, 1, [200, 100, 0]);
  const pixel = (k: number) => [...set.slice(4 * k, 4 * k + 4)];
  expect(pixel(0)).toEqual([200, 100, 0, 255]);
  expect(pixel(2)).toEqual([0, 0, 0, 255]);
  // white of radiance 1 is rolled off to 0.9 in light (0.8 + 0.2 / 2), 243 encoded by IEC 61966-2-1; 128 parts of it in 255
  expect(pixel(1)).toEqual([222, 172, 122, 255]);
});
