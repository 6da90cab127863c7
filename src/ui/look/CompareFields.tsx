/**
 * What stands beside the piece: nothing, the ball it is cut from, or another; then either side is this plan, one of its versions, a
 * plan of the shelf or of a file, and the right one in the same or another glass, finish and light.
 */
import { useState } from "react";
import { GLASS_NAMES } from "../../core/optics/glasses.ts";
import { LIGHT_NAMES } from "../../core/optics/light-settings.ts";
import { PlanFileError } from "../../core/plan/file.ts";
import { fileFaultInWords } from "../../words/file-faults.ts";
import { LIGHT_WORDS } from "../../words/lights.ts";
import { Choice } from "../controls/Choice.tsx";
import { Pick } from "../controls/Pick.tsx";
import { useKeptPlans } from "../library/kept-plans.ts";
import { whyInexact } from "../library/why-inexact.ts";
import { lookWords } from "../messages/look.ts";
import { planWords } from "../messages/plan.ts";
import { useLanguage, useWords } from "../messages/words.tsx";
import { readPlanFile } from "../shared/files.ts";
import { useStudioStore } from "../studio.ts";
import { FileButton } from "./FileButton.tsx";
import {
  type Compared,
  type FinishChoice,
  type GlassChoice,
  type LightChoice,
  setLook,
  useLook,
} from "./look-settings.ts";

const GLASSES: readonly GlassChoice[] = ["planned", ...GLASS_NAMES];
const FINISHES: readonly FinishChoice[] = ["planned", "ground", "prepolished", "polished"];
/** Stands for "as in the picture beside it". */
const SAME = "same" as const;
/** Stands for the plan on the bench. */
const THIS = "this";

/** The plan of one side, from whatever is kept here. */
function PlanChoice({
  label,
  value,
  onChange,
  onTrouble,
}: {
  label: string;
  value: Compared | null;
  onChange: (chosen: Compared | null) => void;
  onTrouble: (words: string | null) => void;
}) {
  const words = useWords(lookWords).compare;
  const kept = useKeptPlans(onTrouble);
  const isKept = value === null || kept.options.some(({ id }) => id === value.id);

  const take = async (id: string) => {
    onTrouble(null);
    if (id === THIS) return onChange(null);
    const option = kept.options.find((one) => one.id === id);
    const plan = option ? await kept.read(id) : null;
    if (option && plan) onChange({ id, name: option.name, plan });
  };
  return (
    <Choice
      label={label}
      value={value?.id ?? THIS}
      options={[
        { id: THIS, words: words.thisPlan },
        // from a file or an idea, or no longer kept
        ...(isKept ? [] : [{ id: value.id, words: value.name }]),
        ...kept.options,
      ]}
      onChange={(id) => void take(id)}
    />
  );
}

/** Any two: what stands on the left, and what on the right. */
function BothPlans({ onTrouble }: { onTrouble: (words: string | null) => void }) {
  const studio = useStudioStore();
  const words = useWords(lookWords).compare;
  const own = useLook((settings) => settings.own);
  const other = useLook((settings) => settings.other);
  return (
    <>
      <PlanChoice
        label={words.left}
        value={own}
        onChange={(chosen) => setLook(studio, { own: chosen })}
        onTrouble={onTrouble}
      />
      <PlanChoice
        label={words.right}
        value={other}
        onChange={(chosen) => setLook(studio, { other: chosen })}
        onTrouble={onTrouble}
      />
    </>
  );
}

function OtherLookChoices() {
  const studio = useStudioStore();
  const look = useWords(lookWords);
  const language = useLanguage();
  const { glasses } = useWords(planWords).piece;
  const words = look.compare;
  const ofRight = (what: string) => `${words.right}: ${what}`;
  const other = useLook((settings) => settings.otherLook);
  const picture = useLook((settings) => settings.picture);
  const same: { id: typeof SAME; words: string } = { id: SAME, words: words.same };
  return (
    <>
      <Choice<GlassChoice | typeof SAME>
        label={ofRight(look.glass.glass)}
        value={other.glass ?? SAME}
        options={[
          same,
          ...GLASSES.map((id) => ({ id, words: id === "planned" ? look.glass.planned : glasses[id] })),
        ]}
        onChange={(glass) =>
          setLook(studio, { otherLook: { ...other, glass: glass === SAME ? undefined : glass } })
        }
      />
      <Choice<FinishChoice | typeof SAME>
        label={ofRight(look.glass.finish)}
        value={other.finish ?? SAME}
        options={[same, ...FINISHES.map((id) => ({ id, words: look.glass.finishes[id] }))]}
        onChange={(finish) =>
          setLook(studio, { otherLook: { ...other, finish: finish === SAME ? undefined : finish } })
        }
      />
      <Choice<LightChoice | typeof SAME>
        label={ofRight(look.light.title)}
        value={other.light ?? SAME}
        options={[
          same,
          ...LIGHT_NAMES.map((id) => ({ id, words: LIGHT_WORDS[id][language] })),
          ...(picture ? [{ id: "picture" as const, words: picture.name }] : []),
        ]}
        onChange={(light) =>
          setLook(studio, { otherLook: { ...other, light: light === SAME ? undefined : light } })
        }
      />
    </>
  );
}

export function CompareFields() {
  const studio = useStudioStore();
  const words = useWords(lookWords).compare;
  const language = useLanguage();
  const against = useLook((settings) => settings.against);
  const layout = useLook((settings) => settings.layout);
  const [trouble, setTrouble] = useState<string | null>(null);
  const take = async (file: File) => {
    try {
      const { plan } = await readPlanFile(file);
      const why = await whyInexact(plan, language);
      if (why === null)
        setLook(studio, { other: { id: "file", name: plan.name || file.name, plan }, against: "other" });
      setTrouble(why === null ? null : words.bad(file.name, why));
    } catch (error) {
      if (!(error instanceof PlanFileError)) throw error;
      setTrouble(words.bad(file.name, fileFaultInWords(error.fault, language)));
    }
  };
  return (
    <section className="look-part">
      <h2>{words.title}</h2>
      <Pick
        label={words.against}
        value={against}
        options={[
          { id: "nothing", words: words.nothing },
          { id: "uncut", words: words.uncutBall },
          { id: "other", words: words.other },
        ]}
        onChange={(next) => setLook(studio, { against: next })}
      />
      {against === "other" ? (
        <>
          <BothPlans onTrouble={setTrouble} />
          <OtherLookChoices />
        </>
      ) : null}
      {against === "nothing" ? null : (
        <Pick
          label={words.layout}
          value={layout}
          options={[
            { id: "line", words: words.byLine },
            { id: "side", words: words.sideBySide },
          ]}
          onChange={(next) => setLook(studio, { layout: next })}
        />
      )}
      <FileButton
        accept=".json,application/json"
        words={words.choosePlan}
        onFiles={([file]) => void take(file)}
      />
      {trouble ? (
        <p className="look-trouble" role="alert">
          {trouble}
        </p>
      ) : null}
    </section>
  );
}
