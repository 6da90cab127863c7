import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { App } from "./ui/app/App.tsx";
import { beginVisit } from "./ui/visit.ts";

/** How long the page waits for the plan of the last visit before it shows an example: no plan is shown only to be replaced. */
const WAIT_MS = 600;

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

const waited = new Promise<void>((resolve) => setTimeout(resolve, WAIT_MS));
const begun = beginVisit();
void Promise.race([begun, waited]).then(show);
void begun.then(openLink);
window.addEventListener("hashchange", () => void openLink());
