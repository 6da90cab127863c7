import { describe, expect, it } from "vitest";
import { cutBall } from "../../../src/core/geometry/solid.ts";
import { escapeXml } from "../../../src/core/models/escape-xml.ts";
import { outlinesSvg } from "../../../src/core/models/outlines-svg.ts";
import { skinSvg } from "../../../src/core/models/skin-svg.ts";
import type { SolvedPlan } from "../../../src/core/plan/solved.ts";
import { cubic, gone, twoSided, uncut } from "./model-support.ts";

const MARGIN = 12;
const solidOf = (solved: SolvedPlan) => cutBall(solved.planes);
const pathsOf = (svg: string, name: string): string[] =>
  [...svg.matchAll(new RegExp(`<path class="${name}"[^>]* d="([^"]*)"`, "g"))].map((m) => m[1]);

/** Rings of a path of M, L and Z with absolute numbers. */
const ringsOf = (d: string): [number, number][][] =>
  d
    .split("M")
    .filter((part) => part !== "")
    .map((part) =>
      part
        .replace(/Z$/, "")
        .split("L")
        .map((pair) => pair.split(",").map(Number) as [number, number]),
    );
const areaOf = (ring: readonly (readonly [number, number])[]): number =>
  ring.reduce((sum, [x, y], i) => {
    const [u, v] = ring[(i + 1) % ring.length];
    return sum + (x * v - u * y) / 2;
  }, 0);

describe("the unrolled skin", () => {
  it("shows round skin with its true area: the projection is equal-area", () => {
    for (const solved of [twoSided, uncut]) {
      const svg = skinSvg(solved, solidOf(solved));
      const drawn = pathsOf(svg, "skin")
        .flatMap(ringsOf)
        .reduce((sum, ring) => sum + areaOf(ring), 0);
      const exact = solidOf(solved).skinArea * solved.radiusMm ** 2;
      expect(Math.abs(drawn) / exact).toBeCloseTo(1, 3);
    }
  });

  it("puts every border where R x azimuth across and R x sin(elevation) up say, at true size", () => {
    const { radiusMm: R, planes } = twoSided;
    const svg = skinSvg(twoSided, solidOf(twoSided));
    expect(svg).toContain(
      `<rect id="frame" x="12" y="12" width="${(2 * Math.PI * R).toFixed(3)}" height="30"/>`,
    );
    expect(svg).toMatch(/<svg [^>]*width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 \1 \2"/);
    const points = pathsOf(svg, "borders").flatMap(ringsOf).flat();
    expect(points.length).toBeGreaterThan(500);
    for (const [x, y] of points) {
      const azimuth = (x - MARGIN) / R;
      const z = (MARGIN + R - y) / R;
      const r = Math.sqrt(Math.max(0, 1 - z * z));
      const at = [r * Math.cos(azimuth), r * Math.sin(azimuth), z];
      const off = planes.map(({ n, h }) => Math.abs(n[0] * at[0] + n[1] * at[1] + n[2] * at[2] - h));
      // on some facet's circle, to the rounding of three decimals of a millimetre and the map's own resampling
      expect(Math.min(...off) * R).toBeLessThan(0.02);
    }
  });

  it("carries the ink mark at its azimuth, a note on the projection and a check bar of 50 mm", () => {
    const svg = skinSvg(twoSided, solidOf(twoSided));
    const ink = MARGIN + (15 * 30 * Math.PI) / 180;
    expect(svg).toContain(`id="ink-mark" stroke-dasharray="2 1" d="M${Number(ink.toFixed(3))} 12v30"`);
    expect(svg).toContain("Equal-area cylindrical projection");
    expect(svg).toMatch(/id="check-bar" d="M12 [\d.]+h50M/);
  });

  it("names every facet that is left once", () => {
    const svg = skinSvg(twoSided, solidOf(twoSided));
    for (const { id } of twoSided.facets) expect(svg.split(`>${id}</text>`)).toHaveLength(2);
  });

  it("is drawn for a piece without skin and for one that is gone", () => {
    expect(pathsOf(skinSvg(cubic, solidOf(cubic)), "skin")).toEqual([]);
    expect(pathsOf(skinSvg(gone, solidOf(gone)), "skin")).toEqual([]);
    expect(skinSvg(gone, solidOf(gone))).not.toContain("NaN");
  });
});

describe("facet outlines at true size", () => {
  it("draw each outline of a tier once where all are alike, with its true size", () => {
    const svg = outlinesSvg(twoSided, solidOf(twoSided));
    const { radiusMm: R } = twoSided;
    const solid = solidOf(twoSided);
    expect(pathsOf(svg, "outline").length).toBeLessThan(twoSided.facets.length);
    const window = twoSided.facets.findIndex((f) => f.id === "window/1");
    expect(svg).toContain(`${(solid.facets[window].width * R).toFixed(2)} mm across`);
    expect(svg).toMatch(/id="check-bar" d="M12 [\d.]+h50M/);
  });

  it("draw straight edges with their true length and area", () => {
    const svg = outlinesSvg(cubic, solidOf(cubic));
    const [d] = pathsOf(svg, "outline");
    const ring = d
      .slice(1, -1)
      .split("L")
      .map((pair) => pair.split(" ").map(Number) as [number, number]);
    // the planes stand 8 mm from the centre, so a face is 16 mm wide; SVG's y runs down
    const closed = ring.filter(([x, y], i) => i === 0 || x !== ring[0][0] || y !== ring[0][1]);
    expect(closed).toHaveLength(4);
    expect(Math.abs(areaOf(closed))).toBeCloseTo(256, 1);
  });

  it("draw an uncut circle as two half arcs of its radius", () => {
    const one = {
      ...uncut,
      planes: [{ n: [0, 0, 1] as const, h: 0.8 }],
      facets: [{ ...twoSided.facets[0], id: "a/1" }],
    };
    const [d] = pathsOf(outlinesSvg(one, solidOf(one)), "outline");
    expect(d.match(/A9 9 0 0 0 /g)).toHaveLength(2);
  });

  it("are an empty sheet for a piece that is gone", () => {
    expect(pathsOf(outlinesSvg(gone, solidOf(gone)), "outline")).toEqual([]);
  });
});

describe("names in drawings", () => {
  it("are text, never markup", () => {
    for (const svg of [skinSvg(cubic, solidOf(cubic)), outlinesSvg(cubic, solidOf(cubic))]) {
      expect(svg).not.toMatch(/<script/);
      expect(svg).toContain("&lt;script&gt;");
      expect(svg).not.toContain("\u0007");
    }
  });

  it("keep every character that XML can write", () => {
    expect(escapeXml(`a<b>&"'\t\n é 😀`)).toBe("a&lt;b&gt;&amp;&quot;&apos;\t\n é 😀");
    expect(escapeXml("\u0000\ud800x\udc00\uffff")).toBe("\ufffd\ufffdx\ufffd\ufffd");
  });
});
