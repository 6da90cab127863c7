/** The whole app: how it speaks and looks, then the frame with its three places. */
import { useEffect, useLayoutEffect, useMemo } from "react";
import type { Preferences } from "../../state/preferences.ts";
import { languageOf } from "../../words/language.ts";
import { useLapAddress } from "../lap/lap-open.ts";
import { spoken } from "../messages/german.ts";
import { Speaking } from "../messages/words.tsx";
import { useShortcuts } from "../shared/shortcuts.ts";
import { beginTrail } from "../shared/trail.ts";
import { useStudioStore } from "../studio.ts";
import { HabitsContext } from "../use-format.ts";
import { useStudio } from "../use-studio.ts";
import { Crashed } from "./Crashed.tsx";
import { CrashGuard } from "./CrashGuard.tsx";
import { Frame } from "./Frame.tsx";

/** Says on the root element which theme and how much motion are wanted, for the tokens to follow. */
function useRootLook({ theme, motion }: Preferences, language: string) {
  useEffect(() => {
    const root = document.documentElement;
    if (theme === "system") delete root.dataset.theme;
    else root.dataset.theme = theme;
    if (motion === "reduced") root.dataset.motion = "reduced";
    else delete root.dataset.motion;
    root.lang = language;
  }, [theme, motion, language]);
}

export function App() {
  const studio = useStudioStore();
  const preferences = useStudio((state) => state.preferences);
  const language = spoken(preferences.language ?? languageOf(navigator.languages));
  const habits = useMemo(
    () => ({ unit: preferences.units, cuttingAngle: preferences.angles === "cutting" }),
    [preferences.units, preferences.angles],
  );
  useRootLook(preferences, language);
  useShortcuts();
  useLapAddress();
  useLayoutEffect(() => beginTrail(studio), [studio]);
  return (
    <Speaking language={language}>
      <HabitsContext value={habits}>
        <CrashGuard instead={(again) => <Crashed again={again} />}>
          <Frame />
        </CrashGuard>
      </HabitsContext>
    </Speaking>
  );
}
