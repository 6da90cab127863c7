/** A hand at the lap: presses that are held until what they do is there, and ones whose time is told exactly, however busy the machine. */
import type { Locator, Page } from "playwright-core";
import { HOLD_MS } from "../../src/ui/lap/use-hold.ts";

/** Holds a press until what it does is there. */
export async function hold(button: Locator, until: () => Promise<unknown>): Promise<void> {
  await button.scrollIntoViewIfNeeded();
  await button.hover();
  const { mouse } = button.page();
  await mouse.down();
  await until();
  await mouse.up();
}

/** A droplet, a sleeve, a knock; and longer than a press has to be held. */
const TOUCH_MS = { short: HOLD_MS / 2, long: HOLD_MS + 400 };

/**
 * A touch on a page whose clock goes only by what is said here, so that a short one stays short on a machine that does much else;
 * then as long again as any press would have to be held.
 */
export async function touchFor(
  page: Page,
  how: keyof typeof TOUCH_MS,
  down: () => Promise<unknown>,
  up: () => Promise<unknown>,
): Promise<void> {
  await page.clock.install();
  await page.clock.pauseAt((await page.evaluate(() => Date.now())) + 1000);
  await down();
  await page.clock.runFor(TOUCH_MS[how]);
  await up();
  await page.clock.runFor(TOUCH_MS.long);
  // what was begun is drawn before this is answered
  await page.evaluate(
    () =>
      new Promise<void>((done) => {
        const { port1, port2 } = new MessageChannel();
        port2.onmessage = () => done();
        port1.postMessage(null);
      }),
  );
  await page.clock.resume();
}
