/** Pictures that a plan carries: what is let in, what is refused and in which words, and what a link leaves behind. */
import { encode as encodeJpeg } from "jpeg-js";
import { describe, expect, it } from "vitest";
import { reportPlan } from "../../../src/core/check/report.ts";
import { PlanFileError, parsePlan, planFromData, serializePlan } from "../../../src/core/plan/file.ts";
import { PICTURES } from "../../../src/core/plan/limits.ts";
import { fragmentOf, planFromFragment } from "../../../src/core/plan/link.ts";
import { pictureFile, pictureSize, pictureUrl } from "../../../src/core/plan/pictures.ts";
import { fileFaultInWords } from "../../../src/words/file-faults.ts";
import { pngUrl, raster } from "../optics/pictures.ts";

const small = pngUrl(raster(8, 6, () => [10, 200, 30, 255]));
const item = { kind: "picture", shape: "disc", diameterMm: 12, atMm: [0, 0, 0], picture: "a" };
const data = (pictures: object | undefined, inside: readonly object[] = [item]) => ({
  format: "glintwright-plan",
  version: 1,
  name: "p",
  piece: { diameterMm: 30, glass: "borosilicate", inside },
  rig: { wheelStops: 96 },
  tiers: [],
  ...(pictures ? { pictures } : {}),
});
const refused = (made: object): string => {
  try {
    planFromData(made);
  } catch (error) {
    if (!(error instanceof PlanFileError)) throw error;
    return fileFaultInWords(error.fault, "en");
  }
  return "";
};

describe("pictures of a plan", () => {
  it("are read and written back as they are, and known fields", () => {
    const { plan, unknown } = planFromData(data({ a: small }));
    expect(unknown).toEqual([]);
    expect(parsePlan(serializePlan(plan)).plan).toEqual(plan);
  });

  it("tell their size by their head, PNG and JPEG", () => {
    const { width, height, rgba } = raster(24, 17, () => [1, 2, 3, 255]);
    const jpeg = {
      kind: "jpeg" as const,
      bytes: new Uint8Array(encodeJpeg({ width, height, data: rgba }, 80).data),
    };
    expect(pictureSize(jpeg)).toEqual({ width, height });
    expect(pictureSize(pictureFile(small) ?? { kind: "png", bytes: new Uint8Array() })).toEqual({
      width: 8,
      height: 6,
    });
    expect(pictureFile(pictureUrl(jpeg))).toEqual(jpeg);
    expect(refused(data({ a: pictureUrl(jpeg) }))).toBe("");
  });

  it.each([
    ["no data URL", { a: "https://example.org/a.png" }, /^pictures\.a: .*PNG or JPEG/],
    ["another kind", { a: "data:image/svg+xml;base64,PHN2Zz4=" }, /^pictures\.a: .*PNG or JPEG/],
    ["said to be what it isn't", { a: small.replace("png", "jpeg") }, /^pictures\.a: .*PNG or JPEG/],
    ["broken base64", { a: `${small}=x` }, /^pictures\.a: /],
    ["not text", { a: 3 }, /^pictures\.a: .*PNG or JPEG/],
    ["no object", [small], /^pictures: /],
    [
      "too many",
      Object.fromEntries(Array.from({ length: 9 }, (_, k) => [`a${k}`, small])),
      /^pictures: .*at most 8/,
    ],
    [
      "too wide",
      { a: pngUrl(raster(PICTURES.edge + 1, 1, () => [0, 0, 0, 255])) },
      /^pictures\.a: .*2049 by 1/,
    ],
  ])("are refused when %s", (_, pictures, words) => {
    expect(refused(data(pictures))).toMatch(words);
  });

  it("are refused when together too long, and make room for themselves in a file", () => {
    // a PNG may end in chunks that nobody reads: here, bytes of ours
    const bytes = new Uint8Array(1_600_000);
    bytes.set(pictureFile(small)?.bytes ?? []);
    const long = pictureUrl({ kind: "png", bytes });
    expect(refused(data({ a: long, b: long }))).toMatch(/^pictures: .*at most 3145728/);
    const { plan } = planFromData(data({ a: long }));
    expect(parsePlan(serializePlan(plan)).plan.pictures?.a).toBe(long);
  });

  it.each([
    ["no shape", { ...item, shape: "cube" }, /inside\[0\]\.shape/],
    ["no place", { ...item, atMm: undefined }, /inside\[0\]\.atMm/],
    ["no id", { ...item, picture: "" }, /inside\[0\]\.picture/],
  ])("inside: %s", (_, wrong, words) => {
    expect(refused(data({ a: small }, [JSON.parse(JSON.stringify(wrong))]))).toMatch(words);
  });

  it("are told when missing, each once, and nothing else changes", () => {
    const { plan } = planFromData(
      data({ a: small }, [item, { ...item, back: "b" }, { ...item, picture: "b" }]),
    );
    const { findings } = reportPlan(plan);
    expect(findings.filter(({ code }) => code === "picture-missing")).toMatchObject([
      { severity: "info", data: { picture: "b" } },
    ]);
  });

  it("stay behind when a plan goes by link, their ids don't", () => {
    const { plan } = planFromData(data({ a: small }));
    const sent = planFromFragment(fragmentOf(plan))?.plan;
    expect(sent?.pictures).toBeUndefined();
    expect(sent?.piece).toEqual(plan.piece);
  });
});
