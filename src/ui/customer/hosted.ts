/** The page that a link for a customer opens: the same as the file's, and nothing of the workshop. */
import { InexactCut } from "../../core/geometry/inexact-cut.ts";
import type { Plane } from "../../core/geometry/plane.ts";
import { cutBall } from "../../core/geometry/solid.ts";
import { PlanFileError } from "../../core/plan/file.ts";
import { type ShownLink, shownInFragment } from "../../core/show/show-link.ts";
import { showPage } from "../../core/show/show-page.ts";
import { shownTable } from "../../core/show/show-piece.ts";
import css from "../../show/show.css?inline";
import { fileFaultInWords } from "../../words/file-faults.ts";
import { languageOf } from "../../words/language.ts";
import { linkSaid } from "../../words/show.ts";
import { drawingOf } from "../library/thumbnail.ts";
import { HOME } from "../piece/camera.ts";

const NOTHING = { text: "", sha256: "" };

/** The workshop's styles are no longer wanted, but for its typeface; the page has its own. */
function changeStyle(): void {
  for (const sheet of document.styleSheets)
    for (let i = sheet.cssRules.length - 1; i >= 0; i--)
      if (!(sheet.cssRules[i] instanceof CSSFontFaceRule)) sheet.deleteRule(i);
  const own = new CSSStyleSheet();
  own.replaceSync(css);
  document.adoptedStyleSheets = [own];
}

/** Digits left out of an address can make corners that the exact cut refuses: then the ball it is ground from stands there. */
function drawingBy(planes: readonly Plane[]): string {
  try {
    return drawingOf(cutBall(planes), HOME);
  } catch (error) {
    if (!(error instanceof InexactCut)) throw error;
    return drawingOf(cutBall([]), HOME);
  }
}

function pageOf({ plan, planes, piece, caption, price, light, table }: ShownLink): Document {
  const { diameterMm } = plan.piece;
  const text = showPage({
    name: plan.name,
    diameterMm,
    caption,
    price,
    maker: plan.maker,
    data: {
      piece,
      light,
      ...(table && { table: shownTable(table, diameterMm) }),
      pictures: [],
      said: linkSaid(plan),
    },
    still: drawingBy(planes),
    script: NOTHING,
    style: NOTHING,
    plan: null,
  });
  return new DOMParser().parseFromString(text, "text/html");
}

/** What can't be read is said, in the reader's language. */
function sayWhy(error: PlanFileError): void {
  const language = languageOf(navigator.languages);
  document.documentElement.lang = language;
  const main = document.createElement("main");
  const said = document.createElement("p");
  said.textContent = fileFaultInWords(error.fault, language);
  main.append(said);
  document.body.replaceChildren(main);
}

export async function openShown(hash: string): Promise<void> {
  changeStyle();
  // another link in the same tab is another page
  window.addEventListener("hashchange", () => location.reload());
  try {
    const page = pageOf(shownInFragment(hash));
    for (const part of page.querySelectorAll('script:not([type="application/json"]), style')) part.remove();
    document.title = page.title;
    document.body.replaceChildren(...page.body.childNodes);
  } catch (error) {
    if (!(error instanceof PlanFileError)) throw error;
    sayWhy(error);
    return;
  }
  await import("../../show/main.ts");
}
