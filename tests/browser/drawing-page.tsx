/** The drawings one plans in, beside each other, with the store and the exact report in reach of a test. */
import "@fontsource-variable/atkinson-hyperlegible-next";
import { createRoot } from "react-dom/client";
import { report, solid, solved } from "../../src/state/derived.ts";
import { Sheet } from "../../src/ui/controls/Sheet.tsx";
import { FIRST_EXAMPLE } from "../../src/ui/first-example.ts";
import { LightFields } from "../../src/ui/look/LightFields.tsx";
import { findingWords } from "../../src/ui/messages/findings.ts";
import FacetCard from "../../src/ui/plan/card/FacetCard.tsx";
import Diary from "../../src/ui/plan/diary/Diary.tsx";
import Mends from "../../src/ui/plan/mends/Mends.tsx";
import { Profile } from "../../src/ui/plan/profile/Profile.tsx";
import { PieceLine } from "../../src/ui/plan/recipe/PieceLine.tsx";
import { Skin } from "../../src/ui/plan/skin/Skin.tsx";
import Suggest from "../../src/ui/plan/suggest/Suggest.tsx";
import PieceSheet from "../../src/ui/settings/PieceSheet.tsx";
import { openSheet, useScreen } from "../../src/ui/shared/screen.ts";
import { createStudio, useStudioStore } from "../../src/ui/studio.ts";
import { StudioProvider } from "../../src/ui/studio-provider.tsx";
import { useSay } from "../../src/ui/use-say.ts";
import { useReport, useStudio } from "../../src/ui/use-studio.ts";
import { findingInWords } from "../../src/words/findings.ts";
import "../../src/ui/theme/tokens.css";
import "../../src/ui/theme/base.css";

const studio = createStudio({ plan: FIRST_EXAMPLE });
/** A second one beside it, on `#two`. */
const other = createStudio({ plan: FIRST_EXAMPLE });
const isTwo = window.location.hash === "#two";
const bench = { studio, other, report, solid, solved };
export type DrawingBench = typeof bench;
Object.assign(window, { bench });

function Findings() {
  const say = useSay();
  return (
    <ul id="findings">
      {useReport().findings.map((finding) => (
        <li key={`${finding.code} ${JSON.stringify(finding.data)}`} data-code={finding.code}>
          {findingInWords(finding, findingWords.en, say)} <Mends finding={finding} />
        </li>
      ))}
    </ul>
  );
}

function Beside() {
  const tierId = useStudio((state) => state.selection.tierId);
  const tier = useStudio((state) => state.plan.tiers).find((t) => t.id === tierId);
  return (
    <div id="beside">
      {tier ? <Suggest tier={tier} /> : null}
      <Findings />
      <FacetCard />
      <Diary />
    </div>
  );
}

/** What a studio keeps besides its plan: which sheet is open, how it is looked at. */
function Rooms() {
  const own = useStudioStore();
  const sheet = useScreen((state) => state.sheet);
  const close = () => openSheet(own, null);
  return (
    <>
      <PieceLine />
      <LightFields />
      {sheet === "piece" ? (
        <Sheet title="Piece" onClose={close}>
          <PieceSheet />
        </Sheet>
      ) : null}
    </>
  );
}

const root = document.getElementById("root");
if (!root) throw new Error("the page has no root");
createRoot(root).render(
  <>
    <StudioProvider studio={studio}>
      <div id="bench">
        <Profile />
        <Skin />
        {isTwo ? <Rooms /> : null}
      </div>
      {window.location.hash === "" ? <Beside /> : null}
    </StudioProvider>
    {isTwo ? (
      <StudioProvider studio={other}>
        <div id="other">
          <Profile />
          <Diary />
          <Rooms />
        </div>
      </StudioProvider>
    ) : null}
  </>,
);
