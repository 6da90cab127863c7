/** The drawings alone, beside each other, with the store and the exact report in reach of a test. */
import "@fontsource-variable/atkinson-hyperlegible-next";
import { createRoot } from "react-dom/client";
import { report, solid, solved } from "../../src/state/derived.ts";
import Profile from "../../src/ui/plan/profile/Profile.tsx";
import Skin from "../../src/ui/plan/skin/Skin.tsx";
import { studio } from "../../src/ui/studio.ts";
import "../../src/ui/theme/tokens.css";

const bench = { studio, report, solid, solved };
export type DrawingBench = typeof bench;
Object.assign(window, { bench });

const root = document.getElementById("root");
if (!root) throw new Error("the page has no root");
createRoot(root).render(
  <div id="bench">
    <Profile />
    <Skin />
  </div>,
);
