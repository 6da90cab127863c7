import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { supportOf } from "../../../src/core/check/size.ts";
import { NothingLeft } from "../../../src/core/geometry/broken-mesh.ts";
import { cutBall } from "../../../src/core/geometry/solid.ts";
import { cross, dot, normalize, scale } from "../../../src/core/geometry/vec.ts";
import { EDGE_MM } from "../../../src/core/optics/edges.ts";
import { LIGHT_SETTINGS } from "../../../src/core/optics/light-settings.ts";
import { MATERIALS } from "../../../src/core/optics/materials.ts";
import { restOnFacet } from "../../../src/core/optics/rest.ts";
import { putOnTable, sceneOfPlan } from "../../../src/core/optics/scene.ts";
import { tableFrame } from "../../../src/core/optics/tabletop.ts";
import type { Plan } from "../../../src/core/plan/document.ts";
import { PlanFileError, planFromData } from "../../../src/core/plan/file.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { type Hashed, showPage } from "../../../src/core/show/show-page.ts";
import { layDown, sceneOfShown, showPiece } from "../../../src/core/show/show-piece.ts";
import { besideWhat, sizeOutline, sizeTexts } from "../../../src/core/show/size-outline.ts";
import { packScene } from "../../../src/render/pack-scene.ts";
import { leant, viewOfEye } from "../../../src/show/eye.ts";
import { showSaid } from "../../../src/words/show.ts";
import { plan, tier } from "../bench/plans.ts";

const HOSTILE = `</script><script>alert(1)</script><img src=x onerror=alert(2)>"'&`;
const hashed = (text: string): Hashed => ({
  text,
  sha256: createHash("sha256").update(text).digest("base64"),
});
const own: Plan = {
  ...plan([
    tier({ id: "first-ring", name: "Waistline", armAngleDeg: 21.375, count: 12, depth: { rule: "touch" } }),
    tier({ id: "second-ring", name: "Shoulder", armAngleDeg: 52.625, count: 8, startDeg: 15.125 }),
    // lies outside the piece by then
    tier({ id: "gone", name: "Gone", armAngleDeg: 21.375, count: 12, depth: { rule: "depth", mm: 0.01 } }),
  ]),
  offer: { currency: "EUR", hourly: 47.35 },
};
const solved = solvePlan(own);
const piece = showPiece(solved);
const NORTH = { kind: "setting", setting: LIGHT_SETTINGS["north-window"], turnRad: 0.4 } as const;

const pageOf = (texts: Partial<Parameters<typeof showPage>[0]> = {}, of: Plan = own) =>
  showPage({
    name: of.name,
    diameterMm: of.piece.diameterMm,
    caption: "",
    price: "",
    maker: of.maker,
    data: { piece, light: "north-window", pictures: [], said: showSaid(solvePlan(of), false) },
    still: "data:image/jpeg;base64,AAAA",
    script: hashed("run()"),
    style: hashed("body{margin:0}"),
    plan: null,
    ...texts,
  });

describe("what a customer's page knows of a piece", () => {
  it("is its shape: the planes that something is left of, each as the plan has it", () => {
    const planes = Array.from({ length: piece.planes.length / 5 }, (_, i) =>
      piece.planes.slice(5 * i, 5 * i + 5),
    );
    expect(planes).toHaveLength(20);
    for (const [x, y, z, h, alpha] of planes) {
      expect(Math.hypot(x, y, z)).toBeCloseTo(1, 6);
      expect(alpha).toBe(0);
      const found = solved.planes.some(
        ({ n, h: d }) => Math.hypot(n[0] - x, n[1] - y, n[2] - z) < 1e-6 && Math.abs(d - h) < 1e-6,
      );
      expect(found).toBe(true);
    }
  });

  it("doesn't tell in which order it was cut, nor what belongs to one tier", () => {
    const depths = solved.tiers.map(({ depthMm }) => depthMm);
    const fixed = own.tiers.map((one, i) => ({ ...one, depth: { rule: "depth", mm: depths[i] } as const }));
    const other = solvePlan({ ...own, tiers: [fixed[1], fixed[0]] });
    expect(showPiece(other).planes).toEqual(piece.planes);
  });

  it("lies on its table as the plan's piece does, and so does the ball it was ground from", () => {
    const down = restOnFacet(solved.planes[0].n).down;
    const floor = -supportOf(cutBall(solved.planes), down);
    const table = { material: MATERIALS.oak, radiusMm: solved.radiusMm, up: scale(down, -1), floor };
    const full = putOnTable(sceneOfPlan(solved, NORTH), table.up, floor, table).tabletop;
    const laid = (onRing: boolean, isUncut = false) =>
      layDown(sceneOfShown(piece, NORTH, isUncut), { ...table, onRing }, isUncut).tabletop;
    expect(laid(false)).toEqual(full);
    expect(laid(false, true)?.height).toBe(-1);
    expect(laid(true)?.hasRing).toBe(true);
    expect(laid(true)?.height).toBeLessThan(floor);
    expect(layDown(sceneOfShown(piece, NORTH), undefined).tabletop).toBeNull();
  });

  it("is seen from above its table, which stands upright in the picture, all the way round", () => {
    const table = tableFrame(normalize([0.3, -0.5, 0.8]));
    for (const turnDeg of [0, 75, 200]) {
      let eye = { turnDeg, leanDeg: 15 };
      for (let k = 0; k < 20; k++) eye = leant(eye, -10, true);
      const view = viewOfEye(eye, 1, table);
      expect(dot(view.eye, table.up)).toBeGreaterThan(0.5);
      expect(dot(view.right, table.up)).toBeCloseTo(0, 12);
      expect(dot(view.up, table.up)).toBeGreaterThan(0);
      expect(dot(cross(view.right, view.up), view.back)).toBeCloseTo(1, 12);
    }
    // a quarter turn leads from where the front looks to its right
    expect(dot(viewOfEye({ turnDeg: 90, leanDeg: 0 }, 1, table).back, table.across)).toBeCloseTo(1, 12);
  });

  it("is traced as the plan is: the card gets the same numbers, but for the planes' order", () => {
    const full = packScene(
      sceneOfPlan(
        { ...solved, facets: solved.facets.slice(0, 20), planes: solved.planes.slice(0, 20) },
        NORTH,
        false,
        undefined,
        EDGE_MM,
      ),
    );
    const shown = packScene(sceneOfShown(piece, NORTH));
    expect(shown.defines).toEqual(full.defines);
    expect(shown.spectrum.rgba.length).toBe(full.spectrum.rgba.length);
    shown.spectrum.rgba.forEach((v, i) => {
      expect(v).toBeCloseTo(full.spectrum.rgba[i], 6);
    });
    expect({ ...shown.uniforms }).toEqual({ ...full.uniforms });
    expect(packScene(sceneOfShown(piece, NORTH, true)).planeCount).toBe(0);
  });

  it("is nothing where nothing is left", () => {
    const gone = plan([tier({ count: 2, armAngleDeg: 0, depth: { rule: "depth", mm: 16 } })]);
    expect(() => showPiece(solvePlan(gone))).toThrow(NothingLeft);
  });
});

describe("the page", () => {
  it("holds no angle, start, rule, tier's name or rate without the recipe", () => {
    const html = pageOf();
    for (const secret of [
      "21.375",
      "52.625",
      "15.125",
      "Waistline",
      "Shoulder",
      "first-ring",
      "touch",
      "47.35",
    ])
      expect(html, secret).not.toContain(secret);
    const data = JSON.parse(/id="data">(.*)<\/script>/.exec(html)?.[1] ?? "");
    expect(Object.keys(data)).toEqual(["piece", "light", "pictures", "said"]);
    expect(Object.keys(data.piece).sort()).toEqual(
      ["designs", "dispersion", "nd", "planes", "radiusMm", "sigma", "sigmaRgb"].sort(),
    );
    expect(html).toContain("A shape that can be seen can be measured");
    expect(data.said.de.measured).toContain("kann man auch messen");
  });

  it("tells the recipe where it is asked to, in both languages", () => {
    const said = showSaid(solved, true);
    expect(said.en.recipeLines[0]).toMatch(/^Waistline: 12 facets on the front at 21\.38°, the first at 0°/);
    expect(said.de.recipeLines[1]).toMatch(/^Shoulder: 8 Facetten vorn bei 52,63°, die erste bei 15,13°/);
    const html = pageOf({ data: { piece, light: "north-window", pictures: [], said }, plan: own });
    expect(html).toContain("<li>Waistline: 12 facets");
    expect(JSON.parse(/id="plan">(.*)<\/script>/.exec(html)?.[1] ?? "")).toEqual(own);
  });

  it("takes every text for text", () => {
    const of: Plan = { ...own, name: HOSTILE, maker: { name: HOSTILE } };
    const html = pageOf({ name: HOSTILE, caption: HOSTILE, price: HOSTILE }, of);
    expect(html.match(/<script/g)).toHaveLength(2);
    expect(html).not.toContain("<img src=x");
    expect(html.match(/&lt;\/script&gt;/g)?.length).toBeGreaterThanOrEqual(5);
    const data = JSON.parse(/id="data">(.*)<\/script>/.exec(html)?.[1] ?? "");
    expect(data.said.en.maker).toBe(`by ${HOSTILE}`);
  });

  it("lets nothing run or be asked for but what stands in it, by its own policy", () => {
    const html = pageOf();
    const policy = /Content-Security-Policy" content="([^"]+)"/.exec(html)?.[1] ?? "";
    expect(policy).toMatch(
      /^default-src 'none'; script-src 'sha256-[^']+'; style-src 'sha256-[^']+'; img-src data:;/,
    );
    const of = (element: string) =>
      createHash("sha256")
        .update(new RegExp(`<${element}>([\\s\\S]*?)</${element}>`).exec(html)?.[1] ?? "")
        .digest("base64");
    expect(policy).toContain(`script-src 'sha256-${of("script")}'`);
    expect(policy).toContain(`style-src 'sha256-${of("style")}'`);
    expect(html).not.toMatch(/https?:|(?:src|href)="(?!data:)/);
    expect(() => pageOf({ script: hashed("x='</SCRIPT>'") })).toThrow(RangeError);
  });

  it("leaves out price, caption and maker where there are none", () => {
    expect(pageOf()).not.toMatch(/class="(price|caption|maker|mark)"/);
    expect(pageOf({ price: "180" })).toContain(`<p class="price">180</p>`);
  });
});

describe("size", () => {
  it("is told beside a coin or a hand, to one scale, in both units", () => {
    expect(besideWhat(30)).toBe("coin");
    expect(besideWhat(75)).toBe("hand");
    expect(sizeTexts(25.4)).toEqual({ mm: "25.4", inch: "1.00" });
    const radii = [...sizeOutline(30).matchAll(/ r="([\d.]+)"/g)].map((m) => Number(m[1]));
    // the euro's coin of 1 is 23.25 mm wide
    expect(radii.slice(0, 2)).toEqual([15, 11.625]);
    expect(sizeOutline(75)).toContain("<rect");
  });
});

describe("a maker's mark", () => {
  const withMark = (mark: string) => () => planFromData({ ...plan([]), maker: { mark } });
  it("is a picture that is its own address, and nothing else", () => {
    expect(withMark("data:image/png;base64,iVBORw0KGgo=")().plan.maker).toBeDefined();
    for (const bad of [
      "https://x.example/a.png",
      "data:text/html;base64,PGI+",
      `data:image/png;base64,AA" onload="x`,
    ])
      expect(withMark(bad)).toThrow(PlanFileError);
    expect(withMark("x")).toThrow(/^maker\.mark: wrong-kind/);
  });
});

describe("a picture inside", () => {
  it("travels with the page, made smaller where it is large, and is met where it was", () => {
    const [width, height] = [512, 512];
    const rgba = Uint8Array.from({ length: 4 * width * height }, (_, i) =>
      i % 4 === 3 ? 255 : (i >> 10) % 256,
    );
    const shape = {
      kind: "picture",
      shape: "disc",
      diameterMm: 12,
      atMm: [0, 0, 2],
      picture: "own",
    } as const;
    const filled = { ...own, piece: { ...own.piece, inside: [shape] } };
    const shown = showPiece(solvePlan(filled), new Map([["own", { width, height, rgba }]]));
    expect(JSON.stringify(shown).length).toBeLessThan(350_000);
    const [design] = sceneOfShown(shown, NORTH).designs;
    expect(design.faces?.back).toBe("through");
    const front = design.faces?.front;
    expect([front?.width, front?.height]).toEqual([128, 128]);
    // four rows of the picture, then three more halvings' means
    expect(front?.rgba[0]).toBeCloseTo(rgba[4 * 512], -1);
    expect(design.centre[2]).toBeCloseTo(2 / 15, 12);
  });
});
