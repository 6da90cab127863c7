/**
 * What stands beside the piece: nothing, the ball it is cut from, or any other: this plan or one of its versions, a plan of the
 * shelf or of a file, in the same or another glass, finish and light.
 */
import { useState } from "react";
import { GLASS_NAMES } from "../../core/optics/glasses.ts";
import { LIGHT_SETTINGS, type LightName } from "../../core/optics/lights.ts";
import { PlanFileError } from "../../core/plan/file.ts";
import { fileFaultInWords } from "../../words/file-faults.ts";
import { LIGHT_WORDS } from "../../words/lights.ts";
import { Choice } from "../controls/Choice.tsx";
import { Pick } from "../controls/Pick.tsx";
import { useKeptPlans } from "../library/kept-plans.ts";
import { lookWords } from "../messages/look.ts";
import { planWords } from "../messages/plan.ts";
import { useLanguage, useWords } from "../messages/words.tsx";
import { readPlanFile } from "../shared/files.ts";
import { FileButton } from "./FileButton.tsx";
import { type FinishChoice, type GlassChoice, type LightChoice, setLook, useLook } from "./look-settings.ts";

const LIGHTS = Object.keys(LIGHT_SETTINGS) as LightName[];
const GLASSES: readonly GlassChoice[] = ["planned", ...GLASS_NAMES];
const FINISHES: readonly FinishChoice[] = ["planned", "ground", "prepolished", "polished"];
/** Stands for "as in the picture beside it". */
const SAME = "same" as const;

/** The plan to compare with, from whatever is kept here. */
function PlanChoice({ onTrouble }: { onTrouble: (words: string | null) => void }) {
  const words = useWords(lookWords).compare;
  const other = useLook((settings) => settings.otherPlan);
  const kept = useKeptPlans(onTrouble);
  const [chosen, choose] = useState("this");
  /** Where nothing was chosen here, the plan came from a file. */
  const value = other === null ? "this" : chosen === "this" ? "file" : chosen;

  const take = async (id: string) => {
    onTrouble(null);
    if (id === "file") return;
    const plan = id === "this" ? null : await kept.read(id);
    if (id !== "this" && plan === null) return;
    choose(id);
    setLook({ otherPlan: plan });
  };
  return (
    <Choice
      label={words.plan}
      value={value}
      options={[
        { id: "this", words: words.thisPlan },
        ...(value === "file" && other ? [{ id: "file", words: other.name }] : []),
        ...kept.options,
      ]}
      onChange={(id) => void take(id)}
    />
  );
}

function OtherLookChoices() {
  const look = useWords(lookWords);
  const language = useLanguage();
  const { glasses } = useWords(planWords).piece;
  const words = look.compare;
  const other = useLook((settings) => settings.otherLook);
  const picture = useLook((settings) => settings.picture);
  const same: { id: typeof SAME; words: string } = { id: SAME, words: words.same };
  return (
    <>
      <Choice<GlassChoice | typeof SAME>
        label={look.glass.glass}
        value={other.glass ?? SAME}
        options={[
          same,
          ...GLASSES.map((id) => ({ id, words: id === "planned" ? look.glass.planned : glasses[id] })),
        ]}
        onChange={(glass) => setLook({ otherLook: { ...other, glass: glass === SAME ? undefined : glass } })}
      />
      <Choice<FinishChoice | typeof SAME>
        label={look.glass.finish}
        value={other.finish ?? SAME}
        options={[same, ...FINISHES.map((id) => ({ id, words: look.glass.finishes[id] }))]}
        onChange={(finish) =>
          setLook({ otherLook: { ...other, finish: finish === SAME ? undefined : finish } })
        }
      />
      <Choice<LightChoice | typeof SAME>
        label={look.light.title}
        value={other.light ?? SAME}
        options={[
          same,
          ...LIGHTS.map((id) => ({ id, words: LIGHT_WORDS[id][language] })),
          ...(picture ? [{ id: "picture" as const, words: picture.name }] : []),
        ]}
        onChange={(light) => setLook({ otherLook: { ...other, light: light === SAME ? undefined : light } })}
      />
    </>
  );
}

export function CompareFields() {
  const words = useWords(lookWords).compare;
  const language = useLanguage();
  const against = useLook((settings) => settings.against);
  const layout = useLook((settings) => settings.layout);
  const [trouble, setTrouble] = useState<string | null>(null);
  const take = async (file: File) => {
    try {
      setLook({ otherPlan: (await readPlanFile(file)).plan, against: "other" });
      setTrouble(null);
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
        onChange={(next) => setLook({ against: next })}
      />
      {against === "other" ? (
        <>
          <PlanChoice onTrouble={setTrouble} />
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
          onChange={(next) => setLook({ layout: next })}
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
