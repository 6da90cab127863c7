/** Numbers on the unrolled skin, over plans as people make them: none on another, on a pole's or the mark's name, or on a gap's width. */
import { expect, it } from "vitest";
import { report, solid, solved } from "../../../../src/state/derived.ts";
import { meetRects, type Rect } from "../../../../src/ui/plan/profile/profile-labels.ts";
import { drawSkin } from "../../../../src/ui/plan/skin/skin-drawing.ts";
import { boxOf, GAP_NUMBER_AT, numbersThatFit, tailOf } from "../../../../src/ui/plan/skin/skin-labels.ts";
import { layOut } from "../../../../src/ui/plan/skin/skin-layout.ts";
import { planOf } from "../../../plans/generator.ts";

const PLANS = 60;
const inMm = (mm: number) => `${mm.toFixed(2)} mm`;

it("never stand on each other or on a name, and most facets that have room tell their stop", () => {
  let [asked, told] = [0, 0];
  for (let seed = 0; seed < PLANS; seed++) {
    const plan = planOf(seed);
    const { strip, window } = layOut({ width: 1267, height: 700 }, -Math.PI);
    const drawing = drawSkin(solved(plan), solid(plan), report(plan), strip, window);
    const name = boxOf("vorderer Pol", [6, 17]);
    const { stops, tiers } = numbersThatFit(strip, drawing, [name], inMm, inMm);
    const onStrip = ([x, y]: readonly [number, number]) =>
      [x - strip.width * Math.floor(x / strip.width), y] as const;
    const turns = [-strip.width, 0, strip.width];
    const moved = (box: Rect, by: number) => ({ ...box, left: box.left + by, right: box.right + by });
    const first = new Map<number, string>();
    for (const { tierIndex, key } of drawing.facets) if (!first.has(tierIndex)) first.set(tierIndex, key);
    const boxes = [
      name,
      ...drawing.facets
        .filter(({ key }) => stops.has(key))
        .map((facet) => boxOf(facet.stop ?? "", onStrip(facet.middle), "middle")),
      ...drawing.facets
        .filter(({ key, tierIndex }) => tiers.has(tierIndex) && first.get(tierIndex) === key)
        .map((facet) => boxOf(String(facet.tierIndex + 1), onStrip(facet.middle), "middle")),
    ];
    const gapBoxes = drawing.gaps
      .filter(({ isNamed }) => isNamed)
      .map(({ at, mm }) => {
        const [x, y] = onStrip(at);
        return boxOf(inMm(mm), [x + GAP_NUMBER_AT[0], y + GAP_NUMBER_AT[1]]);
      });
    const missBoxes = drawing.misses.map((miss) => {
      const [[x, y], [dx, dy]] = [onStrip(miss.at), tailOf(miss).number];
      return boxOf(inMm(miss.mm), [x + dx, y + dy]);
    });
    const measures = [...gapBoxes, ...missBoxes];
    boxes.forEach((box, i) => {
      const others = [...boxes.slice(0, i), ...(i > 0 ? measures : [])];
      expect({
        seed,
        on: others.filter((other) => turns.some((turn) => meetRects(moved(box, turn), other))),
      }).toEqual({ seed, on: [] });
    });
    const roomy = drawing.facets.filter(({ stop, widthPx }) => stop !== null && widthPx > 30);
    asked += roomy.length;
    told += roomy.filter(({ key }) => stops.has(key)).length;
  }
  expect(told / asked).toBeGreaterThan(0.5);
});
