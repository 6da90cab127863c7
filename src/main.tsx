import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { App } from "./ui/app/App.tsx";
import { beginVisit } from "./ui/visit.ts";

/** How long the page waits for the plan of the last visit before it shows an example: no plan is shown only to be replaced. */
const PLAN_WAIT_MS = 600;
/** How long it waits for its typeface: text set in another one first would be set anew, and move, when its own arrives. */
const FACE_WAIT_MS = 3000;

const within = (ms: number, what: Promise<unknown>): Promise<unknown> =>
  Promise.race([what, new Promise((resolve) => setTimeout(resolve, ms))]);

function show(): void {
  const place = document.getElementById("app");
  if (!place) throw new Error("index.html has no element with the id app");
  createRoot(place).render(
    <StrictMode>
      <App />
    </StrictMode>,
  );
}

/** Links are read by a chunk of their own: most visits have none. */
async function openLink(): Promise<void> {
  if (!location.hash.startsWith("#plan=")) return;
  const { openLinkedPlan } = await import("./ui/app/open-link.ts");
  await openLinkedPlan();
}

const face = document.fonts.load('1em "Atkinson Hyperlegible Next Variable"');
const begun = beginVisit();
void Promise.all([
  within(PLAN_WAIT_MS, Promise.allSettled([begun])),
  within(FACE_WAIT_MS, Promise.allSettled([face])),
]).then(show);
void begun.then(openLink);
window.addEventListener("hashchange", () => void openLink());
