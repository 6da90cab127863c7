/**
 * The sheet shown and printed within the app. Its own styles are put in as constructed style sheets of a shadow root, so no inline
 * style needs to be allowed; scripts are never taken over. On paper nothing but the sheet is left.
 */
import {
  type CSSProperties,
  type MouseEvent,
  type RefObject,
  useEffect,
  useMemo,
  useRef,
  useState,
} from "react";
import { createPortal, flushSync } from "react-dom";
import { Button } from "../../controls/Button.tsx";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import "./sheet.css";

interface SheetParts {
  readonly style: string;
  /** What the page's own size and margins are. */
  readonly page: string;
  /** Width of the paper, as a length of CSS. */
  readonly width: string;
  readonly body: readonly Node[];
}

/** Rules about the document's root and body hold for the host here. */
const forHost = (style: string): string =>
  style
    .replace(/(^|\n)html, body\s*\{/g, "$1:host, .sheet-page {")
    .replace(/(^|\n)html\s*\{/g, "$1:host {")
    .replace(/(^|[\n{]\s*)body\s*\{/g, "$1.sheet-page {");

/** The face that the file carries is the app's own here. */
const FACE_RULE = /@font-face\s*\{[^}]*\}/g;

/** Takes a sheet apart: it is our own markup, in which every name and note is text already. */
function sheetParts(sheet: string): SheetParts {
  const parsed = new DOMParser().parseFromString(sheet, "text/html");
  const style = [...parsed.querySelectorAll("style")].map((element) => element.textContent ?? "").join("\n");
  for (const element of parsed.querySelectorAll("script, style, link, meta, title")) element.remove();
  return {
    style: forHost(style.replace(FACE_RULE, "")),
    page: /@page\s*\{[^}]*\}/.exec(style)?.[0] ?? "",
    width: /@page\s*\{\s*size:\s*(\S+)/.exec(style)?.[1] ?? "",
    body: [...parsed.body.childNodes],
  };
}

/** On the screen the desk around the sheet gives it the paper's white. */
const WITHOUT_WHITE = "@media screen { .sheet-page { padding: 0; } }";

/** Fills a host's shadow with a copy of the sheet. */
function useSheetIn(parts: SheetParts) {
  const host = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const element = host.current;
    if (!element) return;
    const root = element.shadowRoot ?? element.attachShadow({ mode: "open" });
    const own = new CSSStyleSheet();
    own.replaceSync(`${parts.style}\n${WITHOUT_WHITE}`);
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

/** The nearest holder that scrolls up and down. */
function scrollerOf(element: HTMLElement): HTMLElement | null {
  for (let holder = element.parentElement; holder; holder = holder.parentElement)
    if (/auto|scroll/.test(getComputedStyle(holder).overflowY) && holder.scrollHeight > holder.clientHeight)
      return holder;
  return null;
}

/** Fitted to the width or in true size; what was tapped stays under the finger. */
function useTrueSize(sheet: RefObject<HTMLElement | null>) {
  const [isTrue, setTrue] = useState(false);
  /** Laid out only where the paper is much wider than the screen. */
  const offer = useRef<HTMLDivElement>(null);
  const turnAt = ({ clientX, clientY }: MouseEvent) => {
    const element = sheet.current;
    const desk = element?.parentElement;
    if (!element || !desk || offer.current?.offsetParent == null) return;
    const before = element.getBoundingClientRect();
    flushSync(() => setTrue(!isTrue));
    const after = element.getBoundingClientRect();
    const scale = after.width / before.width;
    desk.scrollLeft += after.left + (clientX - before.left) * scale - clientX;
    const scroller = scrollerOf(desk);
    if (scroller) scroller.scrollTop += after.top + (clientY - before.top) * scale - clientY;
  };
  return { isTrue, setTrue, offer, turnAt };
}

export function SheetPreview({ sheet }: { sheet: string }) {
  const { paper: words } = useWords(benchWords);
  const parts = useMemo(() => sheetParts(sheet), [sheet]);
  const shown = useSheetIn(parts);
  const { isTrue, setTrue, offer, turnAt } = useTrueSize(shown);
  const printed = useSheetIn(parts);
  usePageRule(parts);
  return (
    <>
      <div className="sheet-desk" data-true={isTrue || undefined}>
        <div ref={offer} className="sheet-turn">
          <Button look="outlined" onPress={() => setTrue(!isTrue)}>
            {isTrue ? words.fitted : words.larger}
          </Button>
        </div>
        <div className="sheet-scroll">
          {/* biome-ignore lint/a11y/useKeyWithClickEvents: the button above is the same deed by key */}
          <div
            ref={shown}
            className="sheet-shown"
            style={{ "--paper": parts.width } as CSSProperties}
            role="document"
            aria-label={words.preview}
            onClick={turnAt}
          />
        </div>
      </div>
      {createPortal(<div ref={printed} className="sheet-printed" />, document.body)}
    </>
  );
}
