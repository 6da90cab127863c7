/**
 * A film of full length from the app's own sheet on a device without a graphics card: the time it takes is told before it begins,
 * less is offered where that is long, it ends, and what is handed over is the film that was chosen. Read back by mp4box.
 */
import { createFile, MP4BoxBuffer } from "mp4box";
import type { Page } from "playwright-core";
import { beforeEach, expect, it } from "vitest";
import { plan, tier } from "../core/bench/plans.ts";
import { closeSheet, dropFile, fileOf, openFromMenu } from "./built-app.ts";
import { handedOver, takeFiles } from "./hand-over.ts";
import { sharedApp, sharedVisit } from "./shared.ts";

/** One visit: a sheet that is opened again has forgotten nothing of what was chosen. */
const visit = sharedVisit(
  sharedApp(),
  {},
  {
    prepare: async (page) => {
      await dropFile(page, "quay.glintwright.json", PIECE);
      await page.getByText(/^Opened /).waitFor();
    },
  },
);
const PIECE = JSON.stringify({
  ...plan([
    tier({ count: 3, armAngleDeg: 30, depth: { rule: "depth", mm: 4 } }),
    tier({ id: "b", name: "B", side: "back", count: 2, armAngleDeg: 60, depth: { rule: "depth", mm: 3 } }),
  ]),
  name: "Quay",
});
/** A film's own patience: so many pictures are traced in software beside all else that the machine does. */
const TRACED_MS = 480_000;

/** The one track of an MP4 file by mp4box (GPAC, BSD-3). */
function trackOf(bytes: Buffer) {
  const file = createFile();
  const found: { duration: number; timescale: number; nb_samples: number; width: number; height: number }[] =
    [];
  file.onReady = ({ tracks }) => {
    for (const { duration, timescale, nb_samples, video } of tracks)
      found.push({ duration, timescale, nb_samples, width: video?.width ?? 0, height: video?.height ?? 0 });
  };
  file.appendBuffer(MP4BoxBuffer.fromArrayBuffer(new Uint8Array(bytes).buffer, 0));
  file.flush();
  expect(found).toHaveLength(1);
  return found[0];
}

/** Brightness of each picture as the browser's player shows it, coarsely. */
const picturesOf = (page: Page, rate: number, count: number) =>
  page.locator("video").evaluate(
    async (video, [perSecond, of]) => {
      if (!(video instanceof HTMLVideoElement)) throw new Error("no film");
      video.pause();
      const seen: number[][] = [];
      for (let k = 0; k < of; k++) {
        const sought = new Promise((resolve) => video.addEventListener("seeked", resolve, { once: true }));
        video.currentTime = (k + 0.5) / perSecond;
        await sought;
        const canvas = new OffscreenCanvas(24, 24);
        const context = canvas.getContext("2d", { willReadFrequently: true });
        context?.drawImage(video, 0, 0, 24, 24);
        const { data = [] } = context?.getImageData(0, 0, 24, 24) ?? {};
        seen.push([...data]);
      }
      return seen;
    },
    [rate, count] as const,
  );
const apart = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + Math.abs(value - b[i]), 0) / a.length;

let page: Page;
beforeEach(() => {
  page = visit.page;
});

it("tells the time before it begins, offers less where that is long, and can be stopped", async () => {
  await openFromMenu(page, "Film of the piece");
  const sheet = page.getByRole("dialog");
  const pick = (words: string) => sheet.getByText(words, { exact: true }).click();
  const radio = (words: string) => sheet.getByRole("radio", { name: words, exact: true });
  // without a card it begins with what ends
  await expect.poll(() => radio("Draft").isChecked()).toBe(true);
  expect(await radio("12").isChecked()).toBe(true);
  await sheet.getByText(/^Takes about \d+ (s|min) on this device\.$/).waitFor({ timeout: TRACED_MS });
  expect(await sheet.getByText("without a graphics card").count()).toBe(1);

  // 12 seconds of the finest: hours here, and a press gives up what it takes
  await pick("Best");
  await pick("12 s");
  await pick("24");
  const less = sheet.getByRole("button", { name: /^In about/ });
  await less.waitFor({ timeout: TRACED_MS });
  expect(await less.textContent()).toMatch(/^In about \d+ (s|min): (Good|Draft)/);
  await less.click();
  expect(await radio("Best").isChecked()).toBe(false);

  const make = sheet.getByRole("button", { name: "Make the film" });
  // by key: who began it stands on what stops it, and then where it is begun again
  await make.press("Enter");
  await sheet.getByRole("progressbar").waitFor();
  await page.keyboard.press("Enter");
  await make.waitFor();
  expect(await make.evaluate((press) => press === document.activeElement)).toBe(true);
  expect(await sheet.getByRole("alert").count()).toBe(0);
  // nothing was made, and this browser hands nothing over
  expect(await sheet.getByRole("button", { name: "Send it" }).count()).toBe(0);
  await closeSheet(page);
});

it("ends, as long and large as was chosen, shows walking back what it showed walking past, and is handed over", async () => {
  await takeFiles(page);
  await openFromMenu(page, "Film of the piece");
  const sheet = page.getByRole("dialog");
  const pick = (words: string) => sheet.getByText(words, { exact: true }).click();
  for (const words of ["Walking past", "Small", "3 s", "12", "Draft"]) await pick(words);
  await sheet.getByRole("button", { name: "Make the film" }).click();
  await sheet.getByText(/^Picture \d+ of 36, about \d+ (s|min) left$/).waitFor({ timeout: TRACED_MS });
  await sheet.getByText(/^MP4, 3 s, /).waitFor({ timeout: TRACED_MS });
  const file = await fileOf(page, () => sheet.getByRole("button", { name: "Save the film" }).click());
  expect(file.name).toBe("Quay-film.mp4");
  await sheet.getByRole("button", { name: "Send it" }).click();
  await expect.poll(() => handedOver(page)).toEqual([["Quay-film.mp4", "video/mp4", file.bytes.length]]);
  const { duration, timescale, nb_samples, width, height } = trackOf(file.bytes);
  expect([nb_samples, width, height]).toEqual([36, 180, 180]);
  expect(duration / timescale).toBeCloseTo(3, 2);
  const seen = await picturesOf(page, 12, 36);
  // 40 sin(2 pi k / 36): picture k and 18 - k stand alike, and 9 stands farthest from 27
  expect(apart(seen[4], seen[14])).toBeLessThan(0.5 * apart(seen[4], seen[9]));
  expect(apart(seen[9], seen[27])).toBeGreaterThan(apart(seen[8], seen[9]));
  expect(visit.foreign).toEqual([]);
});
