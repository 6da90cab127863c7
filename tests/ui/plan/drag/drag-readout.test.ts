/** Where the words beside a drag stand. */
import { describe, expect, it } from "vitest";
import { placeClear } from "../../../../src/ui/plan/drag/DragReadout.tsx";

describe("the words of a drag in the profile", () => {
  it("stand over a small picture, clear of its name, when the page has room above", () => {
    const box = { width: 330, height: 200 };
    const style = placeClear({ kind: "picture" }, box, 500);
    expect(style?.insetBlockEnd).toBeGreaterThan(box.height);
    expect(placeClear({ kind: "picture" }, box, 120)).toBeNull();
  });

  it("stand at the right of a large one, beyond its knobs, when the picture has room there", () => {
    const clearOf = { kind: "left-part", toPx: 660 } as const;
    expect(placeClear(clearOf, { width: 950, height: 600 }, 50)?.insetInlineStart).toBe(660);
    expect(placeClear(clearOf, { width: 800, height: 600 }, 50)).toBeNull();
  });
});
