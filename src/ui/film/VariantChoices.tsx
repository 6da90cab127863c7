/** What is to be added to a sheet of variants: a plan, a glass, a light, or one of each. */
import { useState } from "react";
import { GLASS_NAMES } from "../../core/optics/glasses.ts";
import { LIGHT_NAMES, type LightName } from "../../core/optics/light-settings.ts";
import type { Plan } from "../../core/plan/document.ts";
import { solid } from "../../state/derived.ts";
import { LIGHT_WORDS } from "../../words/lights.ts";
import { Button } from "../controls/Button.tsx";
import { Choice } from "../controls/Choice.tsx";
import { useKeptPlans } from "../library/kept-plans.ts";
import type { OtherLook } from "../look/look-settings.ts";
import { variantName } from "../look/variant-name.ts";
import { filmWords } from "../messages/film.ts";
import { lookWords } from "../messages/look.ts";
import { planWords } from "../messages/plan.ts";
import { useLanguage, useWords } from "../messages/words.tsx";
import { usePlan } from "../use-studio.ts";
import type { Variant } from "./draw-variants.ts";

/** As Look shows it now. */
const SAME = "same" as const;
const THIS = "this";

export function VariantChoices({
  isFull,
  onAdd,
  onTrouble,
}: {
  /** No more go into the sheet. */
  isFull: boolean;
  onAdd: (variants: readonly Variant[]) => void;
  onTrouble: (why: string | null) => void;
}) {
  const words = useWords(filmWords).variants;
  const look = useWords(lookWords);
  const { glasses } = useWords(planWords).piece;
  const language = useLanguage();
  const plan = usePlan();
  const kept = useKeptPlans(onTrouble);
  const [of, setOf] = useState(THIS);
  const [glass, setGlass] = useState<NonNullable<OtherLook["glass"]> | typeof SAME>(SAME);
  const [light, setLight] = useState<LightName | typeof SAME>(SAME);

  /** The chosen plan in each of these looks. */
  const add = async (looks: readonly OtherLook[]) => {
    const other: Plan | null = of === THIS ? plan : await kept.read(of);
    if (other === null) return;
    if (solid(other).vanished) return onTrouble(words.vanished(other.name));
    const nameOf = (own: OtherLook) => variantName(other.name, own, { look, glasses, language });
    onAdd(looks.map((own) => ({ plan: other, look: own, name: nameOf(own) })));
  };
  const chosen: OtherLook = { ...(glass === SAME ? {} : { glass }), ...(light === SAME ? {} : { light }) };

  return (
    <>
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
            ...LIGHT_NAMES.map((id) => ({ id, words: LIGHT_WORDS[id][language] })),
          ]}
          onChange={setLight}
        />
      </div>
      <p className="film-row">
        <Button look="strong" isDisabled={isFull} onPress={() => void add([chosen])}>
          {words.add}
        </Button>
        <Button
          look="outlined"
          isDisabled={isFull}
          onPress={() => void add(LIGHT_NAMES.map((one) => ({ light: one })))}
        >
          {words.allLights}
        </Button>
        <Button
          look="outlined"
          isDisabled={isFull}
          onPress={() => void add(GLASS_NAMES.map((one) => ({ glass: one })))}
        >
          {words.allGlasses}
        </Button>
      </p>
    </>
  );
}
