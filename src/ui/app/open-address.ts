/** What the address asks for: a plan that it carries, or the one at which the lap stood. Opened with the page, or when it is pasted. */
import { PlanFileError, serializePlan } from "../../core/plan/file.ts";
import { planFromFragment } from "../../core/plan/link.ts";
import type { Session } from "../../state/session.ts";
import { faultOf } from "../../state/storage/faults.ts";
import { type Address, addressOf, putAddress } from "../address.ts";
import { followAddress } from "../carried-plan.ts";
import { agreeToBench, isAgreed } from "../lap/lap-open.ts";
import { libraryWords } from "../messages/library.ts";
import { storageWords } from "../messages/storage.ts";
import { faultSaid } from "../shared/fault-said.ts";
import { tell } from "../shared/screen.ts";
import { languageNow, type Studio } from "../studio.ts";
import { layOnBench, visitOf } from "../visit.ts";

/** Puts a plan of the library on the bench, unless it lies there. @returns whether it does now */
async function isOnBench(studio: Studio, session: Session, id: string): Promise<boolean> {
  if (studio.getState().planId === id) return true;
  try {
    return (await session.openPlan(id)).ok;
  } catch (error) {
    session.health.setState({ fault: faultOf(error).kind });
    return false;
  }
}

/** Lays the plan that the address carries on the bench; what can't be read is said and changes nothing. */
async function layCarried(studio: Studio, fragment: string): Promise<boolean> {
  const words = libraryWords[languageNow(studio)].models;
  const { session } = visitOf(studio).getState();
  try {
    const file = planFromFragment(fragment);
    if (!file) return false;
    const same = (await session?.library.idOf(serializePlan(file.plan))) ?? null;
    // a code that is read again every morning is one plan, not thirty
    const wasThere = studio.getState().planId === same;
    if (session && same !== null && (await isOnBench(studio, session, same))) {
      if (!wasThere) tell(studio, { tone: "said", text: words.openedLink(file.plan.name) });
      return true;
    }
    const trouble = await layOnBench(studio, file.plan, file.unknown, true);
    const details = trouble === null ? [words.linkKept] : [storageWords[languageNow(studio)].faults[trouble]];
    if (trouble !== null) tell(studio, { tone: "stop", text: words.badLink, details });
    else if (session?.library.port.durable)
      tell(studio, { tone: "said", text: words.openedLink(file.plan.name), details });
    return trouble === null;
  } catch (error) {
    if (!(error instanceof PlanFileError)) throw error;
    tell(studio, {
      tone: "stop",
      text: words.badLink,
      details: [await faultSaid(error.fault, languageNow(studio))],
    });
    return false;
  }
}

/** Brings what the address names to the bench. @returns whether it lies there now */
async function bring(studio: Studio, { lap, plan }: Address): Promise<boolean> {
  const { session } = visitOf(studio).getState();
  if (session && lap?.planId && (await isOnBench(studio, session, lap.planId))) return true;
  if (plan !== null) return layCarried(studio, plan);
  // a bookmark of the lap itself is for the plan that lay here last
  return lap?.planId === null && studio.getState().planId !== null;
}

export async function openAddressed(studio: Studio, hash: string): Promise<void> {
  const address = addressOf(hash);
  if (address.lap === null && address.plan === null) return;
  // the lap just opened for what lies on the bench asks for nothing
  const isHere = (address.lap !== null && isAgreed(studio)) || (await bring(studio, address));
  const { session } = visitOf(studio).getState();
  if (address.lap && isHere) agreeToBench(studio);
  if (session) followAddress(studio, session);
  else if (address.plan !== null && !address.lap) putAddress({ lap: null, plan: null });
}
