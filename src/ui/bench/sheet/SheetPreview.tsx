/**
 * The sheet shown and printed within the app. Its own styles are put in as constructed style sheets of a shadow root, so no inline
 * style needs to be allowed; scripts are never taken over. On paper nothing but the sheet is left.
 */
import { useEffect, useMemo, useRef } from "react";
import { createPortal } from "react-dom";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import "./sheet.css";

interface SheetParts {
  readonly style: string;
  /** What the page's own size and margins are. */
  readonly page: string;
  readonly body: readonly Node[];
}

/** Rules about the document's root and body hold for the host here. */
const forHost = (style: string): string =>
  style.replace(/(^|\n)html\s*\{/g, "$1:host {").replace(/(^|[\n{]\s*)body\s*\{/g, "$1.sheet-page {");

/** Takes a sheet apart: it is our own markup, in which every name and note is text already. */
export function sheetParts(sheet: string): SheetParts {
  const parsed = new DOMParser().parseFromString(sheet, "text/html");
  const style = [...parsed.querySelectorAll("style")].map((element) => element.textContent ?? "").join("\n");
  for (const element of parsed.querySelectorAll("script, style, link, meta, title")) element.remove();
  return {
    style: forHost(style),
    page: /@page\s*\{[^}]*\}/.exec(style)?.[0] ?? "",
    body: [...parsed.body.childNodes],
  };
}

/** Fills a host's shadow with a copy of the sheet. */
function useSheetIn(parts: SheetParts) {
  const host = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const element = host.current;
    if (!element) return;
    const root = element.shadowRoot ?? element.attachShadow({ mode: "open" });
    const own = new CSSStyleSheet();
    own.replaceSync(parts.style);
    root.adoptedStyleSheets = [own];
    const page = document.createElement("div");
    page.className = "sheet-page";
    page.append(...parts.body.map((node) => node.cloneNode(true)));
    root.replaceChildren(page);
  }, [parts]);
  return host;
}

/** Size and margins of the paper hold for the whole document while a sheet is shown. */
function usePageRule({ page }: SheetParts) {
  useEffect(() => {
    const rule = new CSSStyleSheet();
    rule.replaceSync(page);
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, rule];
    return () => {
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((one) => one !== rule);
    };
  }, [page]);
}

export function SheetPreview({ sheet }: { sheet: string }) {
  const { paper: words } = useWords(benchWords);
  const parts = useMemo(() => sheetParts(sheet), [sheet]);
  const shown = useSheetIn(parts);
  const printed = useSheetIn(parts);
  usePageRule(parts);
  return (
    <>
      <div className="sheet-desk">
        <div ref={shown} className="sheet-shown" role="document" aria-label={words.preview} />
      </div>
      {createPortal(<div ref={printed} className="sheet-printed" />, document.body)}
    </>
  );
}
