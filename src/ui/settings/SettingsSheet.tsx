/** How a person likes to see things. Kept on this device, never in a plan. */
import type { Preferences } from "../../state/preferences.ts";
import { languageOf } from "../../words/language.ts";
import { Pick } from "../controls/Pick.tsx";
import { Toggle } from "../controls/Toggle.tsx";
import { fetchGerman } from "../messages/german.ts";
import { settingsWords } from "../messages/settings.ts";
import { useWords } from "../messages/words.tsx";
import { useStudio } from "../use-studio.ts";
import { sayNoGerman } from "../visit.ts";
import { AngleDrawing } from "./AngleDrawing.tsx";
import "./settings.css";
import { useStudioStore } from "../studio.ts";

const optionsOf = <Id extends string>(words: Readonly<Record<Id, string>>) =>
  (Object.keys(words) as Id[]).map((id) => ({ id, words: words[id] }));

/** A language is spoken once its words are there. */
async function speak(language: Preferences["language"]): Promise<Partial<Preferences>> {
  if ((language ?? languageOf(navigator.languages)) === "de") await fetchGerman();
  return { language };
}

export default function SettingsSheet() {
  const studio = useStudioStore();
  const words = useWords(settingsWords);
  const preferences = useStudio((state) => state.preferences);
  const prefer = useStudio((state) => state.prefer);
  const set = (change: Partial<Preferences>) => prefer(change);
  return (
    <>
      <Pick
        label={words.theme}
        value={preferences.theme}
        options={optionsOf(words.themes)}
        onChange={(theme) => set({ theme })}
      />
      <Pick
        label={words.language}
        value={preferences.language ?? "system"}
        options={optionsOf(words.languages)}
        onChange={(language) =>
          void speak(language === "system" ? null : language).then(set, () => sayNoGerman(studio))
        }
      />
      <div>
        <Pick
          label={words.units}
          value={preferences.units}
          options={optionsOf(words.unitNames)}
          onChange={(units) => set({ units })}
        />
        <p className="field-hint">{words.unitsHint}</p>
      </div>
      <div className="angles">
        <div>
          <Pick
            label={words.angles}
            value={preferences.angles}
            options={optionsOf(words.angleNames)}
            onChange={(angles) => set({ angles })}
          />
          <p className="field-hint">{words.anglesHint}</p>
        </div>
        <AngleDrawing />
      </div>
      <Pick
        label={words.motion}
        value={preferences.motion}
        options={optionsOf(words.motions)}
        onChange={(motion) => set({ motion })}
      />
      <Toggle isOn={preferences.snapping} onChange={(snapping) => set({ snapping })}>
        {words.snapping}
      </Toggle>
    </>
  );
}
