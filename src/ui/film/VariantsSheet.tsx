/** A sheet of variants to choose from: up to twelve plans, versions, glasses, finishes or lights in one picture, each with its name. */
import { useEffect, useState } from "react";
import { GLASS_NAMES } from "../../core/optics/glasses.ts";
import { LIGHT_SETTINGS, type LightName } from "../../core/optics/lights.ts";
import { solid } from "../../state/derived.ts";
import { LIGHT_WORDS } from "../../words/lights.ts";
import { Button } from "../controls/Button.tsx";
import { Choice } from "../controls/Choice.tsx";
import { Pick } from "../controls/Pick.tsx";
import { packPlans, unpackPlans } from "../ideas/wall-shelf.ts";
import { useKeptPlans } from "../library/kept-plans.ts";
import type { OtherLook } from "../look/look-settings.ts";
import { tracedPicture, useTracing } from "../look/traced.ts";
import { useJob } from "../look/use-job.ts";
import { variantName } from "../look/variant-name.ts";
import { filmWords } from "../messages/film.ts";
import { lookWords } from "../messages/look.ts";
import { planWords } from "../messages/plan.ts";
import { useLanguage, useWords } from "../messages/words.tsx";
import { useViewport } from "../piece/viewport.ts";
import { fileNameOf, offerFile } from "../shared/files.ts";
import { intoView } from "../shared/into-view.ts";
import { SendButton } from "../shared/SendButton.tsx";
import { useOutlasting } from "../shared/use-outlasting.ts";
import { useFormat } from "../use-format.ts";
import { usePlan } from "../use-studio.ts";
import { drawVariants, MOST_VARIANTS, type Variant } from "./draw-variants.ts";
import "./film.css";

const LIGHTS = Object.keys(LIGHT_SETTINGS) as LightName[];
/** As Look shows it now. */
const SAME = "same" as const;
const THIS = "this";
const SIZES = { card: 640, software: 160 } as const;
const SAMPLES = { draft: 16, good: 128, best: 512 } as const;
type Fineness = keyof typeof SAMPLES;
const FINENESSES = Object.keys(SAMPLES) as Fineness[];

interface Listed extends Variant {
  readonly key: number;
}

/** A variant without its plan. */
type Told = Omit<Listed, "plan">;

const isTold = (data: unknown): data is Told => {
  const { key, name, look } = (data ?? {}) as Partial<Told>;
  if (!Number.isInteger(key) || typeof name !== "string" || typeof look !== "object") return false;
  const { glass, light } = look ?? {};
  const hasGlass = glass === undefined || GLASS_NAMES.some((one) => one === glass);
  return hasGlass && (light === undefined || LIGHTS.some((one) => one === light));
};

const NONE: readonly Listed[] = [];

/** The list as the window keeps it: what several of its plans share stands once. */
const writeList = (list: readonly Listed[]) => ({
  told: list.map(({ plan: _, ...told }) => told),
  plans: packPlans(list.map(({ plan }) => plan)),
});

function readList(data: unknown): readonly Listed[] | null {
  const { told, plans } = (data ?? {}) as { readonly told?: unknown; readonly plans?: unknown };
  if (!Array.isArray(told)) return null;
  const found = unpackPlans(plans);
  return told.slice(0, MOST_VARIANTS).flatMap((one, i) => {
    const plan = found[i];
    return plan && isTold(one) ? [{ ...one, plan }] : [];
  });
}

/** A picture as its own address, for as long as it is shown. */
function usePicture() {
  const [picture, setPicture] = useState<{ readonly file: Blob; readonly url: string } | null>(null);
  const url = picture?.url;
  useEffect(() => () => (url === undefined ? undefined : URL.revokeObjectURL(url)), [url]);
  return [
    picture,
    (file: Blob | null) => setPicture(file && { file, url: URL.createObjectURL(file) }),
  ] as const;
}

export default function VariantsSheet() {
  const { eye } = useViewport();
  const words = useWords(filmWords).variants;
  const film = useWords(filmWords);
  const look = useWords(lookWords);
  const { glasses } = useWords(planWords).piece;
  const language = useLanguage();
  const { number } = useFormat();
  const plan = usePlan();
  const job = useJob();
  const state = useTracing();
  const [trouble, setTrouble] = useState<string | null>(null);
  const kept = useKeptPlans(setTrouble);
  const [list, setList] = useOutlasting("variants", NONE, readList, writeList);
  const [of, setOf] = useState(THIS);
  const [glass, setGlass] = useState<NonNullable<OtherLook["glass"]> | typeof SAME>(SAME);
  const [light, setLight] = useState<LightName | typeof SAME>(SAME);
  const [fineness, setFineness] = useState<Fineness>("draft");
  const [picture, setPicture] = usePicture();
  const canTrace = state?.check.pass ?? false;
  const isFull = list.length >= MOST_VARIANTS;
  useEffect(() => {
    tracedPicture();
  }, []);

  const nameOf = (name: string, own: OtherLook) => variantName(name, own, { look, glasses, language });
  const put = (variants: readonly Variant[]) =>
    setList((now) =>
      [...now, ...variants.map((one, i) => ({ ...one, key: (now.at(-1)?.key ?? 0) + 1 + i }))].slice(
        0,
        MOST_VARIANTS,
      ),
    );
  const chosen = async () => (of === THIS ? plan : kept.read(of));
  const add = async () => {
    const other = await chosen();
    if (other === null) return;
    if (solid(other).vanished) {
      setTrouble(words.vanished(other.name));
      return;
    }
    const own: OtherLook = {
      ...(glass === SAME ? {} : { glass }),
      ...(light === SAME ? {} : { light }),
    };
    put([{ plan: other, look: own, name: nameOf(other.name, own) }]);
  };
  /** One of each: lights or glasses of the plan that is chosen. */
  const addAll = async (looks: readonly OtherLook[]) => {
    const other = await chosen();
    if (other !== null) put(looks.map((own) => ({ plan: other, look: own, name: nameOf(other.name, own) })));
  };
  const rename = (key: number, name: string) =>
    setList((now) => now.map((one) => (one.key === key ? { ...one, name } : one)));
  const make = () =>
    job.start(async (signal, onShare) => {
      setPicture(null);
      const size = SIZES[state?.check.code === "software" ? "software" : "card"];
      setPicture(await drawVariants(list, eye.getState().view, size, SAMPLES[fineness], signal, onShare));
    });
  const file = fileNameOf({ ...plan, name: `${plan.name} ${words.ending}` }).replace(
    /\.glintwright\.json$/,
    ".png",
  );

  return (
    <section className="film">
      <div className="film-fields">
        <p className="soft">{words.intro(number(MOST_VARIANTS, 0))}</p>
        <div className="film-choices">
          <Choice
            label={words.plan}
            value={of}
            options={[{ id: THIS, words: plan.name }, ...kept.options]}
            onChange={setOf}
          />
          <Choice<typeof glass>
            label={look.glass.glass}
            value={glass}
            options={[
              { id: SAME, words: words.same },
              ...GLASS_NAMES.map((id) => ({ id, words: glasses[id] })),
            ]}
            onChange={setGlass}
          />
          <Choice<typeof light>
            label={look.light.title}
            value={light}
            options={[
              { id: SAME, words: words.same },
              ...LIGHTS.map((id) => ({ id, words: LIGHT_WORDS[id][language] })),
            ]}
            onChange={setLight}
          />
        </div>
        <p className="film-row">
          <Button look="strong" isDisabled={isFull} onPress={() => void add()}>
            {words.add}
          </Button>
          <Button
            look="outlined"
            isDisabled={isFull}
            onPress={() => void addAll(LIGHTS.map((one) => ({ light: one })))}
          >
            {words.allLights}
          </Button>
          <Button
            look="outlined"
            isDisabled={isFull}
            onPress={() => void addAll(GLASS_NAMES.map((one) => ({ glass: one })))}
          >
            {words.allGlasses}
          </Button>
        </p>
        {isFull ? <p className="soft">{words.full(number(MOST_VARIANTS, 0))}</p> : null}
        {trouble ? <p role="alert">{trouble}</p> : null}
        <ol className="film-list">
          {list.map(({ key, name }, i) => (
            <li key={key}>
              <input
                type="text"
                aria-label={words.nameOf(number(i + 1, 0))}
                value={name}
                maxLength={80}
                onChange={(event) => rename(key, event.currentTarget.value)}
              />
              <Button onPress={() => setList((now) => now.filter((one) => one.key !== key))}>
                {words.remove}
                <span className="unseen"> {name}</span>
              </Button>
            </li>
          ))}
        </ol>
        {list.length > 1 ? <Button onPress={() => setList(NONE)}>{words.removeAll}</Button> : null}
        <Pick
          label={film.fine}
          value={fineness}
          options={FINENESSES.map((id) => ({ id, words: film.finenesses[id] }))}
          onChange={setFineness}
        />
        {state && !canTrace ? <p role="alert">{words.cannot}</p> : null}
        {job.share === null ? (
          <Button look="outlined" isDisabled={!canTrace || list.length === 0} onPress={make}>
            {words.make}
          </Button>
        ) : (
          <p className="film-row" role="status">
            <span>
              {film.progress(number(Math.floor(job.share * list.length), 0), number(list.length, 0))}
            </span>
            <Button onPress={job.stop}>{film.stop}</Button>
          </p>
        )}
        {job.trouble ? <p role="alert">{words.failed(job.trouble)}</p> : null}
        {picture ? (
          <p className="film-row">
            <Button look="strong" onPress={() => offerFile(file, picture.file)}>
              {words.save}
            </Button>
            <SendButton name={file} file={picture.file} />
          </p>
        ) : null}
      </div>
      {picture ? (
        <img
          onLoad={(event) => intoView(event.currentTarget)}
          className="film-picture"
          src={picture.url}
          alt={words.picture}
        />
      ) : null}
    </section>
  );
}
