/** A USDZ opened in the room by a link (WebKit's `rel=ar`): with a stub for a browser that can, since none of the machine's can. */
import { expect, it } from "vitest";
import { libraryWords } from "../../src/ui/messages/library.ts";
import { openFromMenu } from "./built-app.ts";
import { sharedApp } from "./shared.ts";

const app = sharedApp();
const { stand } = libraryWords.en.models;

/** Takes presses of such links, and nothing opens. */
const opensRooms = () => {
  DOMTokenList.prototype.supports = (token) => token === "ar";
  const press = HTMLAnchorElement.prototype.click;
  HTMLAnchorElement.prototype.click = function (this: HTMLAnchorElement) {
    if (this.rel !== "ar") return press.call(this);
    const inside = [...this.children].map(({ tagName }) => tagName);
    Object.assign(globalThis, { opened: [this.protocol, inside] });
  };
};

it("is offered only where the browser says that it can, as a link that holds one picture", async () => {
  const able = await app.visit({ without3d: true, before: opensRooms });
  await openFromMenu(able.page, "Models and links");
  await able.page.getByRole("dialog").getByRole("button", { name: stand }).click();
  await expect
    .poll(() => able.page.evaluate(() => (globalThis as unknown as { opened?: unknown }).opened))
    .toEqual(["blob:", ["IMG"]]);
  expect(able.errors).toEqual([]);
  await able.close();

  const unable = await app.visit({ without3d: true });
  await openFromMenu(unable.page, "Models and links");
  await unable.page.getByRole("dialog").getByRole("button", { name: /^STL/ }).waitFor();
  expect(await unable.page.getByRole("dialog").getByRole("button", { name: stand }).count()).toBe(0);
  await unable.close();
});
