import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { App } from "./ui/app/App.tsx";
import { fetchSpoken } from "./ui/messages/german.ts";
import { createPageStudio, type Studio } from "./ui/studio.ts";
import { StudioProvider } from "./ui/studio-provider.tsx";
import { beginVisit, sayNoGerman, sayUnbegun, visitOf } from "./ui/visit.ts";

/** How long the page waits for the plan of the last visit before it shows an example: no plan is shown only to be replaced. */
const PLAN_WAIT_MS = 600;
/** How long it waits for its typeface: text set in another one first would be set anew, and move, when its own arrives. */
const FACE_WAIT_MS = 3000;

const within = (ms: number, what: Promise<unknown>): Promise<unknown> =>
  Promise.race([what, new Promise((resolve) => setTimeout(resolve, ms))]);

function show(studio: Studio): void {
  const place = document.getElementById("app");
  if (!place) throw new Error("index.html has no element with the id app");
  createRoot(place).render(
    <StrictMode>
      <StudioProvider studio={studio}>
        <App />
      </StudioProvider>
    </StrictMode>,
  );
}

/** What the address asks for is read by a chunk of its own: most visits ask for nothing. */
async function openAddress(studio: Studio, hash: string): Promise<void> {
  if (hash.length < 2) return;
  const { openAddressed } = await import("./ui/app/open-address.ts");
  await openAddressed(studio, hash);
}

async function begin(studio: Studio): Promise<void> {
  const { hash } = location;
  try {
    await beginVisit(studio);
    await openAddress(studio, hash);
  } catch {
    await sayUnbegun(studio);
  } finally {
    visitOf(studio).setState({ hasBegun: true });
  }
}

function beginWorkshop(): void {
  const studio = createPageStudio();
  const face = document.fonts.load('1em "Atkinson Hyperlegible Next Variable"');
  const words = fetchSpoken().catch(() => sayNoGerman(studio));
  const begun = words.then(() => begin(studio));
  void Promise.all([
    within(FACE_WAIT_MS, Promise.allSettled([face])),
    words.then(() => within(PLAN_WAIT_MS, Promise.allSettled([begun]))),
  ]).then(() => show(studio));
  window.addEventListener("hashchange", () =>
    isForCustomer(location.hash)
      ? location.reload()
      : void begun.then(() => openAddress(studio, location.hash)).catch(() => sayUnbegun(studio)),
  );
}

/** A link for a customer opens the piece and nothing of the workshop; nothing is opened or kept here. */
const isForCustomer = (hash: string): boolean => hash.startsWith("#show=");

if (isForCustomer(location.hash))
  void import("./ui/customer/hosted.ts").then(({ openShown }) => openShown(location.hash));
else beginWorkshop();
