/** Plan files in and out of the browser. A file that can't be read changes nothing and says why. */
import type { Plan } from "../../core/plan/document.ts";
import { type PlanFile, PlanFileError, parsePlan, serializePlan } from "../../core/plan/file.ts";
import { FILE } from "../../core/plan/limits.ts";
import { freshPlan } from "../first-example.ts";
import { shellWords } from "../messages/shell.ts";
import { languageNow, type Studio } from "../studio.ts";
import { layOnBench, whyUnkept } from "../visit.ts";
import { openSheet, tell } from "./screen.ts";

/** Words outside of React, in the language of the screen. */
const wordsNow = (studio: Studio) => shellWords[languageNow(studio)];

/** A file name that every system takes: letters and figures of any script, the rest as dashes. */
export const fileNameOf = (plan: Plan): string => {
  const stem = plan.name
    .normalize("NFC")
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 60);
  return `${stem || "plan"}.glintwright.json`;
};

/** Hands the browser a file to keep. */
export function offerFile(name: string, content: Blob): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(content);
  link.download = name;
  link.click();
  // The browser has taken hold of the content once the click is handled.
  setTimeout(() => URL.revokeObjectURL(link.href), 0);
}

export function savePlanFile(studio: Studio): void {
  const { plan } = studio.getState();
  const name = fileNameOf(plan);
  offerFile(name, new Blob([serializePlan(plan)], { type: "application/json" }));
  tell(studio, { tone: "said", text: wordsNow(studio).fileSaved(name) });
}

async function textOf(file: File): Promise<string> {
  if (file.size > FILE.bytes)
    throw new PlanFileError({ code: "file-too-heavy", data: { bytes: file.size, most: FILE.bytes } });
  try {
    return await file.text();
  } catch {
    throw new PlanFileError({ code: "file-unreadable", data: {} });
  }
}

/** The plan in a file. @throws PlanFileError */
export const readPlanFile = async (file: File): Promise<PlanFile> => parsePlan(await textOf(file));

/** Puts the plan of a file on the bench, a wish before the wall of ideas, or says why not and leaves everything as it was. */
export async function openPlanFile(studio: Studio, file: File): Promise<boolean> {
  const words = wordsNow(studio);
  try {
    const { plan, unknown } = await readPlanFile(file);
    if (!(await lay(studio, plan, unknown, true))) return false;
    tell(studio, {
      tone: "said",
      text: words.fileOpened(plan.name || words.unnamed),
      details: unknown.length > 0 ? [words.fileUnknown(unknown.join(", "))] : [],
    });
    return true;
  } catch (error) {
    if (!(error instanceof PlanFileError)) throw error;
    return (await import("./no-plan.ts")).takeNoPlan(studio, file, error);
  }
}

/** Asks the person for a file. */
export function choosePlanFile(studio: Studio): void {
  const input = document.createElement("input");
  input.type = "file";
  input.accept = ".json,application/json";
  input.addEventListener("change", () => {
    const file = input.files?.[0];
    if (file) void openPlanFile(studio, file);
  });
  input.click();
}

/** Puts a plan on the bench and shows it; when what lies there can't be kept, says so and changes nothing. */
async function lay(
  studio: Studio,
  plan: Plan,
  unknown: readonly string[] = [],
  keep = false,
): Promise<boolean> {
  const trouble = await layOnBench(studio, plan, unknown, keep);
  if (trouble === null) {
    openSheet(studio, null);
    studio.getState().go("plan");
    return true;
  }
  tell(studio, {
    tone: "stop",
    text: wordsNow(studio).notKept,
    details: await whyUnkept(studio, trouble, true),
  });
  return false;
}

export const openPlan = (studio: Studio, plan: Plan): void => void lay(studio, plan);

export const beginFresh = (studio: Studio, name: string): void => openPlan(studio, freshPlan(name));
