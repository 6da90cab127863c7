/** For a customer: what the page says, and the button that makes it. Nothing leaves this device. */
import { useEffect, useId, useMemo, useRef, useState } from "react";
import { priceOf } from "../../core/offer/offer.ts";
import type { LightName } from "../../core/optics/light-settings.ts";
import type { Offer, Plan, Showing } from "../../core/plan/document.ts";
import { PlanFileError } from "../../core/plan/file.ts";
import { TEXT } from "../../core/plan/limits.ts";
import { type ShownTexts, showFragment } from "../../core/show/show-link.ts";
import { samePiece, solid, solved } from "../../state/derived.ts";
import { moneyIn } from "../../words/currency.ts";
import { engineFaultInWords } from "../../words/engine-faults.ts";
import { showPart } from "../bench/bench-screen.ts";
import { benchPool } from "../bench/bench-worker-client.ts";
import { Button } from "../controls/Button.tsx";
import { Toggle } from "../controls/Toggle.tsx";
import { FileButton } from "../look/FileButton.tsx";
import { lookOf } from "../look/look-settings.ts";
import { useJob } from "../look/use-job.ts";
import { customerWords } from "../messages/customer.ts";
import { shellWords } from "../messages/shell.ts";
import { useLanguage, useWords } from "../messages/words.tsx";
import { fileNameOf, offerFile } from "../shared/files.ts";
import { canHandOver } from "../shared/hand-over.ts";
import { intoView } from "../shared/into-view.ts";
import { SendButton } from "../shared/SendButton.tsx";
import { openSheet, useScreen } from "../shared/screen.ts";
import { useStudioStore } from "../studio.ts";
import { useFormat } from "../use-format.ts";
import { usePlan, useStudio } from "../use-studio.ts";
import { useSession } from "../visit.ts";
import { laidOf, makePage } from "./make-page.ts";
import { markOf } from "./mark.ts";
import "./customer.css";

const BYTES_PER_KB = 1000;

interface Made {
  readonly file: string;
  readonly page: Blob;
}

interface LineProps {
  readonly label: string;
  readonly value: string;
  readonly hint?: string;
  readonly onChange: (text: string) => void;
  readonly onBlur?: () => void;
}

function Line(props: LineProps) {
  const id = useId();
  return (
    <p className="customer-line">
      <label className="field-label" htmlFor={id}>
        {props.label}
      </label>
      <input
        id={id}
        type="text"
        autoComplete="off"
        maxLength={TEXT.name}
        value={props.value}
        aria-describedby={props.hint ? `${id}-hint` : undefined}
        onChange={(event) => props.onChange(event.currentTarget.value)}
        onBlur={props.onBlur}
      />
      {props.hint ? (
        <span className="field-hint" id={`${id}-hint`}>
          {props.hint}
        </span>
      ) : null}
    </p>
  );
}

/** Puts what is said of the maker or of the piece into the plan, so that it can be undone and stays with it. */
function useChange<Part extends "maker" | "showing">(part: Part): (change: NonNullable<Plan[Part]>) => void {
  const before = usePlan()[part];
  const dispatch = useStudio((state) => state.dispatch);
  return (change) => {
    const said = Object.entries({ ...before, ...change }).filter(([, one]) => one);
    const value = said.length > 0 ? Object.fromEntries(said) : undefined;
    dispatch({ type: "set-field", path: [part], value });
  };
}

interface Typed {
  readonly value: string;
  readonly type: (text: string) => void;
  /** Puts what is typed, or a text of one's own, into the plan. */
  readonly enter: (text?: string) => void;
}

/** A text of the page: the plan's once it is entered, where the page is made of the plan on the bench. */
function useShowing(field: keyof Showing): Typed {
  const kept = usePlan().showing?.[field] ?? "";
  const isOnBench = useScreen((state) => state.forCustomer === null);
  const change = useChange("showing");
  const [draft, type] = useState<string | null>(null);
  const enter = (text = draft): void => {
    type(isOnBench ? null : text);
    if (isOnBench && text !== null && text.trim() !== kept) change({ [field]: text.trim() });
  };
  return { value: draft ?? (isOnBench ? kept : ""), type, enter: (text) => enter(text) };
}

/** The page is headed by the plan's name. */
function NameLine({ label }: { label: string }) {
  const { name } = usePlan();
  const dispatch = useStudio((state) => state.dispatch);
  const [draft, setDraft] = useState<string | null>(null);
  const commit = () => {
    setDraft(null);
    if (draft !== null && draft.trim() !== name) dispatch({ type: "set-name", name: draft.trim() });
  };
  return <Line label={label} value={draft ?? name} onChange={setDraft} onBlur={commit} />;
}

function MakerLine({ label }: { label: string }) {
  const { maker } = usePlan();
  const change = useChange("maker");
  const [draft, setDraft] = useState<string | null>(null);
  const commit = () => {
    const name = draft?.trim();
    setDraft(null);
    if (name !== undefined && name !== (maker?.name ?? "")) change({ name });
  };
  return <Line label={label} value={draft ?? maker?.name ?? ""} onChange={setDraft} onBlur={commit} />;
}

function TypedLine({ label, hint, typed }: { label: string; hint?: string; typed: Typed }) {
  const { value, type, enter } = typed;
  return <Line label={label} value={value} hint={hint} onChange={type} onBlur={() => enter()} />;
}

function MarkPart() {
  const words = useWords(customerWords);
  const { maker } = usePlan();
  const change = useChange("maker");
  const session = useSession();
  const [trouble, setTrouble] = useState<string | null>(null);
  const take = async (file: File) => {
    const read = await markOf(file);
    if (typeof read !== "string") {
      setTrouble((read.fault === "too-large" ? words.markTooLarge : words.markUnreadable)(file.name));
      return;
    }
    setTrouble(null);
    await session?.keepAhead(read);
    change({ mark: read });
  };
  return (
    <div className="customer-mark">
      <span className="field-label">{words.mark}</span>
      {maker?.mark ? <img src={maker.mark} alt={words.mark} /> : null}
      <p className="customer-row">
        <FileButton
          accept="image/png,image/svg+xml,image/jpeg,image/webp"
          words={maker?.mark ? words.otherMark : words.chooseMark}
          onFiles={([file]) => void take(file)}
        />
        {maker?.mark ? <Button onPress={() => change({ mark: undefined })}>{words.noMark}</Button> : null}
      </p>
      <span className="field-hint">{words.markHow}</span>
      {trouble ? <p role="alert">{trouble}</p> : null}
    </div>
  );
}

/** What is shown: the plan on the bench, or an idea from the wall. */
function useShownPlan(): Plan {
  const onBench = usePlan();
  return useScreen((state) => state.forCustomer) ?? onBench;
}

interface Found {
  readonly plan: Plan;
  readonly offer: Offer;
  readonly price: string | null;
}

/** The price that the bench reckons, as it is to be read; null without an offer or where it can't be reckoned. */
function useOfferPrice(): string | null {
  const shown = useShownPlan();
  const { locale } = useFormat();
  const { offer } = shown;
  // naming its maker changes nothing of what it takes
  const plan = samePiece(shown);
  const { piece } = plan;
  const [found, setFound] = useState<Found | null>(null);
  useEffect(() => {
    if (!offer) return;
    let isHere = true;
    const find = (price: string | null) => isHere && setFound({ plan, offer, price });
    benchPool.run("workTime", plan).then(
      (time) => {
        const { price } = priceOf(offer, piece, time);
        find(price === null ? null : moneyIn(locale, offer.currency)(price));
      },
      // the bench itself says why; here no price can be offered
      () => find(null),
    );
    return () => {
      isHere = false;
    };
  }, [plan, offer, piece, locale]);
  return offer && found?.plan === plan && found.offer === offer ? found.price : null;
}

/** Null where the piece is too much for a link. */
function useLink(plan: Plan, texts: ShownTexts): string | null {
  const studio = useStudioStore();
  return useMemo(() => {
    if (solid(plan).vanished) return null;
    const table = laidOf(studio, plan);
    try {
      return `${location.origin}${location.pathname}#${showFragment({ ...solved(plan), plan }, { ...texts, ...(table && { table }) })}`;
    } catch (error) {
      if (error instanceof PlanFileError) return null;
      throw error;
    }
  }, [plan, texts, studio]);
}

function LinkPart({ link }: { link: string | null }) {
  const words = useWords(customerWords);
  const plan = useShownPlan();
  const [said, say] = useState<string | null>(null);
  const copy = () => {
    if (link === null) return;
    const asked = navigator.clipboard?.writeText(link) ?? Promise.reject(new Error("no clipboard"));
    asked.then(
      () => say(words.copied),
      () => say(words.notCopied),
    );
  };
  const leaves = Object.keys(plan.pictures ?? {}).length > 0 || plan.maker?.mark !== undefined;
  return (
    <section className="customer-link" aria-labelledby="customer-link">
      <h2 id="customer-link">{words.linkTitle}</h2>
      <p className="soft">{link === null ? words.linkTooLong : words.linkWhat}</p>
      {link === null ? null : (
        <>
          {leaves ? <p className="soft">{words.linkLeaves}</p> : null}
          <p className="customer-line">
            <label className="field-label" htmlFor="customer-address">
              {words.address}
            </label>
            <input
              id="customer-address"
              type="text"
              readOnly
              value={link}
              onFocus={(event) => event.currentTarget.select()}
            />
          </p>
          <p className="customer-row">
            <Button look="outlined" onPress={copy}>
              {words.copy}
            </Button>
            <span role="status">{said}</span>
          </p>
        </>
      )}
    </section>
  );
}

/** What else one sends to a customer, each a press away; all of it is made of the plan on the bench. */
function AlsoPart() {
  const studio = useStudioStore();
  const words = useWords(customerWords);
  const { menu } = useWords(shellWords);
  const go = useStudio((state) => state.go);
  const goToPrice = () => {
    showPart(studio, "price");
    go("bench");
    openSheet(studio, null);
  };
  return (
    <section className="customer-link" aria-labelledby="customer-also">
      <h2 id="customer-also">{words.also}</h2>
      <p className="customer-row">
        <Button look="outlined" onPress={() => openSheet(studio, "film")}>
          {menu.film}
        </Button>
        <Button look="outlined" onPress={() => openSheet(studio, "variants")}>
          {menu.variants}
        </Button>
        <Button look="outlined" onPress={goToPrice}>
          {words.quote}
        </Button>
      </p>
    </section>
  );
}

/** How the page is made, and what became of it: brought into view where the sheet is longer than the screen. */
function MadePart({ made, link, saved }: { made: Made | null; link: string | null; saved: string | null }) {
  const words = useWords(customerWords);
  const part = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (saved !== null) part.current?.scrollIntoView({ block: "nearest" });
  }, [saved]);
  const canSend = made !== null && canHandOver(made.file, made.page.type);
  return (
    <div className="customer-made" ref={part}>
      <p role="status">{saved}</p>
      {made ? (
        <p className="customer-row">
          <SendButton name={made.file} file={made.page} />
          {link === null ? null : (
            <a className="press press-outlined" href={link} target="_blank" rel="noopener">
              {words.see}
            </a>
          )}
        </p>
      ) : null}
      {made && !canSend ? <p className="soft">{words.cannotSend}</p> : null}
    </div>
  );
}

export default function CustomerSheet() {
  const studio = useStudioStore();
  const words = useWords(customerWords);
  const { number } = useFormat();
  const plan = useShownPlan();
  const job = useJob();
  const caption = useShowing("caption");
  const price = useShowing("price");
  const [withRecipe, setWithRecipe] = useState(false);
  const [count, setCount] = useState(1);
  const [saved, setSaved] = useState<string | null>(null);
  const [made, setMade] = useState<Made | null>(null);
  const language = useLanguage();
  const isOnBench = useScreen((state) => state.forCustomer === null);
  const isVanished = solid(plan).vanished;
  const isWorking = job.share !== null;

  const offerPrice = useOfferPrice();
  const { light: chosen } = lookOf(studio).getState();
  const light: LightName = chosen === "picture" ? "north-window" : chosen;
  const texts = useMemo(
    () => ({ caption: caption.value.trim(), price: price.value.trim(), light }),
    [caption.value, price.value, light],
  );
  const link = useLink(plan, texts);
  const make = () =>
    job.start(async (signal, onShare) => {
      setSaved(null);
      const html = await makePage(studio, plan, { ...texts, withRecipe }, signal, (done, of) => {
        setCount(of);
        onShare(done / of);
      }).catch((error: unknown) => {
        const why = engineFaultInWords(error, language);
        throw why === null ? error : new Error(why);
      });
      const page = new Blob([html], { type: "text/html" });
      const file = fileNameOf(plan).replace(/\.glintwright\.json$/, ".html");
      offerFile(file, page);
      setMade({ file, page });
      setSaved(words.saved(file, number(page.size / BYTES_PER_KB, 0)));
    });

  return (
    <section className="customer">
      <p className="soft">{isVanished ? words.vanished : words.intro}</p>
      {chosen === "picture" ? <p className="soft">{words.ownLight}</p> : null}
      {isOnBench ? <NameLine label={words.name} /> : null}
      <MakerLine label={words.maker} />
      <MarkPart />
      <TypedLine label={words.caption} typed={caption} />
      <TypedLine label={words.price} typed={price} hint={words.noPrice} />
      {offerPrice === null ? null : (
        <Toggle isOn={price.value === offerPrice} onChange={(on) => price.enter(on ? offerPrice : "")}>
          {words.offerPrice(offerPrice)}
        </Toggle>
      )}
      <Toggle isOn={withRecipe} onChange={setWithRecipe}>
        {words.recipe}
      </Toggle>
      <p className="soft">{words.noRecipe}</p>
      {job.share === null ? null : (
        <p role="status">{words.progress(Math.round(job.share * count), count)}</p>
      )}
      {/* one press for both, so that who pressed it by key still stands there */}
      <div ref={isWorking ? intoView : null}>
        <Button
          look={isWorking ? "outlined" : "strong"}
          isDisabled={isVanished}
          onPress={isWorking ? job.stop : make}
        >
          {isWorking ? words.cancel : words.make}
        </Button>
      </div>
      <MadePart made={made} link={link} saved={saved} />
      {job.trouble ? <p role="alert">{words.failed(job.trouble)}</p> : null}
      {isVanished ? null : <LinkPart link={link} />}
      {isOnBench ? <AlsoPart /> : null}
    </section>
  );
}
