/** For a customer: what the page says, and the button that makes it. Nothing leaves this device. */
import { useId, useState } from "react";
import { TEXT } from "../../core/plan/limits.ts";
import { solid } from "../../state/derived.ts";
import { fileNameOf, offerFile } from "../app/files.ts";
import { Button } from "../controls/Button.tsx";
import { Toggle } from "../controls/Toggle.tsx";
import { lookSettings } from "../look/look-settings.ts";
import { useJob } from "../look/use-job.ts";
import { customerWords } from "../messages/customer.ts";
import { useWords } from "../messages/words.tsx";
import { useFormat } from "../use-format.ts";
import { usePlan, useStudio } from "../use-studio.ts";
import { makePage } from "./make-page.ts";
import "./customer.css";

const BYTES_PER_KB = 1000;

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

/** The maker's name is the plan's, so it can be undone and stays with it. */
function MakerLine({ label }: { label: string }) {
  const { maker } = usePlan();
  const dispatch = useStudio((state) => state.dispatch);
  const [draft, setDraft] = useState<string | null>(null);
  const commit = () => {
    const name = draft?.trim();
    setDraft(null);
    if (name === undefined || name === (maker?.name ?? "")) return;
    const { name: _before, ...rest } = maker ?? {};
    const next = name ? { ...rest, name } : rest;
    const value = Object.keys(next).length > 0 ? next : undefined;
    dispatch({ type: "set-field", path: ["maker"], value });
  };
  return <Line label={label} value={draft ?? maker?.name ?? ""} onChange={setDraft} onBlur={commit} />;
}

export default function CustomerSheet() {
  const words = useWords(customerWords);
  const { number } = useFormat();
  const plan = usePlan();
  const job = useJob();
  const [caption, setCaption] = useState("");
  const [price, setPrice] = useState("");
  const [withRecipe, setWithRecipe] = useState(false);
  const [count, setCount] = useState(1);
  const [saved, setSaved] = useState<string | null>(null);
  const isVanished = solid(plan).vanished;

  const make = () =>
    job.start(async (signal, onShare) => {
      setSaved(null);
      const { light } = lookSettings.getState();
      const texts = {
        caption: caption.trim(),
        price: price.trim(),
        withRecipe,
        light: light === "picture" ? "north-window" : light,
      } as const;
      const html = await makePage(plan, texts, signal, (done, of) => {
        setCount(of);
        onShare(done / of);
      });
      const page = new Blob([html], { type: "text/html" });
      const file = fileNameOf(plan).replace(/\.glintwright\.json$/, ".html");
      offerFile(file, page);
      setSaved(words.saved(file, number(page.size / BYTES_PER_KB, 0)));
    });

  return (
    <section className="customer">
      <p className="soft">{isVanished ? words.vanished : words.intro}</p>
      <MakerLine label={words.maker} />
      <Line label={words.caption} value={caption} onChange={setCaption} />
      <Line label={words.price} value={price} hint={words.noPrice} onChange={setPrice} />
      <Toggle isOn={withRecipe} onChange={setWithRecipe}>
        {words.recipe}
      </Toggle>
      <p className="soft">{words.noRecipe}</p>
      {job.share === null ? (
        <Button look="strong" isDisabled={isVanished} onPress={make}>
          {words.make}
        </Button>
      ) : (
        <p className="customer-row" role="status">
          {words.progress(Math.round(job.share * count), count)}
          <Button onPress={job.stop}>{words.cancel}</Button>
        </p>
      )}
      <p role="status">{saved}</p>
      {job.trouble ? <p role="alert">{words.failed(job.trouble)}</p> : null}
    </section>
  );
}
