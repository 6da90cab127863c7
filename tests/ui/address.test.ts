import { describe, expect, it } from "vitest";
import { addressOf, hashOf } from "../../src/ui/address.ts";

describe("what the address says", () => {
  it.each([
    ["", null, null],
    ["#", null, null],
    ["#place", null, null],
    ["#lapis", null, null],
    ["#lap", { planId: null }, null],
    ["#lap=", { planId: "" }, null],
    ["#lap=a-b_c", { planId: "a-b_c" }, null],
    ["#plan=1.abc", null, "plan=1.abc"],
    ["#lap=x&plan=1.a_-", { planId: "x" }, "plan=1.a_-"],
  ])("%s", (hash, lap, plan) => {
    expect(addressOf(hash)).toEqual({ lap, plan });
    if (lap ?? plan) expect(hashOf({ lap, plan })).toBe(hash);
  });

  it("is nothing where there is nothing to say", () => {
    expect(hashOf({ lap: null, plan: null })).toBe("");
  });
});
