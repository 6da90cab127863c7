/** Offers fill their rows: no row but the last is short, and that by less than the number of rows. */
import { expect, it } from "vitest";
import { offerColumns } from "../../../../src/ui/plan/suggest/offer-columns.ts";

it.each(Array.from({ length: 24 }, (_, i) => i + 1))("leaves no column empty with %s offers", (offers) => {
  const columns = offerColumns(offers);
  const rows = Math.ceil(offers / columns);
  expect(columns).toBeLessThanOrEqual(4);
  expect(rows).toBe(Math.ceil(offers / 4));
  expect(rows * columns - offers).toBeLessThan(rows);
});
