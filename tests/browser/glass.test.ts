/** The colour of the glass: one way in from Plan and Look, the same there and here, kept, and undone by name. */
import { expect, it } from "vitest";
import { glassColourWords } from "../../src/ui/messages/glass-colour.ts";
import { planWords } from "../../src/ui/messages/plan.ts";
import { seriousFindings } from "./built-app.ts";
import { sharedApp } from "./shared.ts";

const app = sharedApp();

it("colours the glass in layers from Plan, shows the same beside Look, keeps it, and undoes it by name", async () => {
  const { page, errors, foreign, close } = await app.visit({
    without3d: true,
    viewport: { width: 390, height: 844 },
  });
  const words = glassColourWords.en;
  const part = page.locator(".glass-part");
  await part.getByRole("button", { name: planWords.en.piece.glassClear }).click();
  await part.getByRole("radio", { name: words.colours.honey }).check({ force: true });
  await part.getByRole("button", { name: planWords.en.piece.glassTinted }).waitFor();
  await part.getByRole("button", { name: words.addLayer }).click();
  await part.getByRole("heading", { name: words.layer("2") }).waitFor();
  // clear under a colour; its own colour instead, and no wider than the piece of 38 mm
  const layer = part.locator("li");
  await layer.getByRole("radio", { name: words.colours.plum }).check({ force: true });
  const width = layer.getByRole("spinbutton", { name: words.within });
  expect(await width.getAttribute("aria-valuemax")).toBe("38");
  expect(await seriousFindings(page)).toEqual([]);
  expect(await page.evaluate("document.documentElement.scrollWidth - innerWidth")).toBe(0);

  await part.getByText(words.flame.wavy).click();
  await part.getByRole("spinbutton", { name: words.flame.slope }).waitFor();
  expect(await page.locator(".undo").getAttribute("aria-label")).toBe("Undo: waviness of the skin");
  await part.getByText(words.flame.seeds).click();
  await part.getByRole("spinbutton", { name: words.flame.count }).waitFor();

  await page.reload();
  await part.getByRole("button", { name: planWords.en.piece.glassCased(2) }).waitFor();
  await page.getByRole("button", { name: "Look", exact: true }).click();
  const beside = page.locator(".look-page .glass-part");
  await beside.getByRole("button", { name: planWords.en.piece.glassCased(2) }).click();
  expect(await beside.locator("li").getByRole("radio", { name: words.colours.plum }).isChecked()).toBe(true);
  expect(await beside.getByRole("switch", { name: words.flame.wavy }).isChecked()).toBe(true);
  expect(await beside.getByRole("switch", { name: words.flame.seeds }).isChecked()).toBe(true);
  await page.getByRole("button", { name: /^Undo/ }).click();
  expect(await beside.getByRole("switch", { name: words.flame.seeds }).isChecked()).toBe(false);
  await page.getByRole("button", { name: /^Undo/ }).click();
  expect(await beside.getByRole("switch", { name: words.flame.wavy }).isChecked()).toBe(false);
  await page.getByRole("button", { name: /^Undo/ }).click();
  expect(await beside.locator("li").getByRole("radio", { name: words.clear }).isChecked()).toBe(true);
  await beside.getByRole("button", { name: words.removeLayer("2") }).click();
  await beside.getByRole("button", { name: planWords.en.piece.glassTinted }).waitFor();
  expect(errors).toEqual([]);
  expect(foreign).toEqual([]);
  await close();
});
