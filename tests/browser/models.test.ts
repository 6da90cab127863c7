/**
 * Models, drawings and links as the browser hands them over: each file arrives and is read back by readers of others: three's
 * loaders for STL and glTF, an unzip of our own by the standard and the browser's XML parser for 3MF and SVG.
 */

import type { Mesh, MeshPhysicalMaterial } from "three";
import { GLTFLoader } from "three/examples/jsm/loaders/GLTFLoader.js";
import { STLLoader } from "three/examples/jsm/loaders/STLLoader.js";
import { expect, it } from "vitest";
import { unzip } from "../core/models/model-support.ts";
import { fileOf, openFromMenu, renamePlan } from "./built-app.ts";
import { sharedApp } from "./shared.ts";

const app = sharedApp();

const HOSTILE = `</title><script>window.strangerRan=1</script>&"x"`;
/** Bytes in a buffer of their own, as loaders want them. */
const bufferOf = (bytes: Buffer): ArrayBuffer => new Uint8Array(bytes).buffer;

it("hands over every model and drawing, each as other programs read it, with the plan's name as text", async () => {
  const { page, errors, foreign, close } = await app.visit({ without3d: true });
  await renamePlan(page, HOSTILE);
  await openFromMenu(page, "Models and links");
  const sheet = page.getByRole("dialog");
  const take = (words: string) => fileOf(page, () => sheet.getByRole("button", { name: words }).click());
  const diameter = 38;

  const stl = await take("STL, for a printer");
  expect(stl.name).toMatch(/\.stl$/);
  const solid = new STLLoader().parse(bufferOf(stl.bytes));
  solid.computeBoundingSphere();
  expect(solid.attributes.position.count).toBeGreaterThan(300);
  expect(solid.boundingSphere!.radius).toBeGreaterThan(0.45 * diameter);
  expect(solid.boundingSphere!.radius).toBeLessThan(0.51 * diameter);

  const glb = await take("glTF, glass for a renderer");
  const gltf = await new Promise<{ scene: { traverse: (visit: (o: object) => void) => void } }>(
    (resolve, reject) => new GLTFLoader().parse(bufferOf(glb.bytes), "", resolve, reject),
  );
  const materials: MeshPhysicalMaterial[] = [];
  gltf.scene.traverse((o) => {
    if ("isMesh" in o) materials.push((o as Mesh<never, MeshPhysicalMaterial>).material);
  });
  expect(materials.length).toBeGreaterThan(0);
  // nd of the borosilicate crown glass for lamp work: 1.473, from memory
  for (const { transmission, ior, thickness } of materials) {
    expect(transmission).toBe(1);
    expect(ior).toBeCloseTo(1.473, 2);
    expect(thickness).toBeGreaterThan(0);
  }

  const files = {
    threeMf: new TextDecoder().decode(
      unzip((await take("3MF, for a printer, with its unit")).bytes).get("3D/3dmodel.model"),
    ),
    skin: (await take("The unrolled skin at true size, SVG")).bytes.toString("utf8"),
    outlines: (await take("Every facet's outline at true size, SVG")).bytes.toString("utf8"),
  };
  const read = await page.evaluate((texts) => {
    const parse = (xml: string) => {
      const tree = new DOMParser().parseFromString(xml, "application/xml");
      return {
        isWell: tree.querySelector("parsererror") === null,
        scripts: tree.querySelectorAll("script").length,
        root: tree.documentElement.localName,
        unit: tree.documentElement.getAttribute("unit"),
        width: tree.documentElement.getAttribute("width"),
        triangles: tree.querySelectorAll("triangle").length,
        paths: tree.querySelectorAll("path").length,
        text: tree.documentElement.textContent ?? "",
      };
    };
    return { threeMf: parse(texts.threeMf), skin: parse(texts.skin), outlines: parse(texts.outlines) };
  }, files);
  expect(read.threeMf).toMatchObject({ isWell: true, scripts: 0, root: "model", unit: "millimeter" });
  expect(read.threeMf.triangles).toBeGreaterThan(100);
  for (const drawing of [read.skin, read.outlines]) {
    expect(drawing).toMatchObject({ isWell: true, scripts: 0, root: "svg" });
    expect(drawing.width).toMatch(/^[\d.]+mm$/);
    expect(drawing.paths).toBeGreaterThan(2);
    expect(drawing.text).toContain(HOSTILE);
  }
  // the map is as long as the piece is round, within its margins
  expect(Number.parseFloat(read.skin.width ?? "")).toBeGreaterThan(Math.PI * diameter);
  expect(await page.evaluate(() => "strangerRan" in window)).toBe(false);
  expect(foreign).toEqual([]);
  expect(errors).toEqual([]);
  await close();
});

it("hands a model to the phone's own programs where the browser can, and says what each format can't show", async () => {
  const { page, errors, close } = await app.visit({
    without3d: true,
    before: () => {
      const handed: unknown[][] = [];
      const share = async ({ files = [] }: ShareData) => {
        for (const { name, type, size } of files) handed.push([name, type, size]);
      };
      const canShare = ({ files = [] }: ShareData = {}) => files.every(({ name }) => /\.usdz$/.test(name));
      Object.assign(globalThis, { handed });
      Object.assign(navigator, { canShare, share });
    },
  });
  await openFromMenu(page, "Models and links");
  const sheet = page.getByRole("dialog");
  expect(await sheet.getByRole("button", { name: "Hand over the glTF" }).count()).toBe(0);
  await sheet.getByRole("button", { name: "Hand over the USDZ" }).click();
  const handed = () => page.evaluate(() => (globalThis as unknown as { handed: unknown[][] }).handed);
  await expect.poll(async () => (await handed()).length).toBe(1);
  const [[name, type, size]] = await handed();
  expect(name).toMatch(/\.usdz$/);
  expect(type).toBe("model/vnd.usdz+zip");
  const saved = await fileOf(page, () => sheet.getByRole("button", { name: /^USDZ/ }).click());
  expect([name, size]).toEqual([saved.name, saved.bytes.length]);
  expect(await sheet.getByText("USDZ can't show").textContent()).toContain("what is inside");
  expect(errors).toEqual([]);
  await close();
});
