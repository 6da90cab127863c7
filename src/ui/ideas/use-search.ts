/** The search that fills the wall, for the plan on the bench and the wish as it stands. */
import { useEffect } from "react";
import type { Found } from "../../core/ideas/search.ts";
import { planOfIdea } from "../../core/ideas/wish.ts";
import type { Plan, Tier } from "../../core/plan/document.ts";
import { useJob } from "../look/use-job.ts";
import { ideasWords } from "../messages/ideas.ts";
import { useWords } from "../messages/words.tsx";
import { type Studio, useStudioStore } from "../studio.ts";
import { usePlan } from "../use-studio.ts";
import { type Beginning, takeAsked } from "./asked.ts";
import {
  type Axis,
  asSaid,
  draftOf,
  type GivenWish,
  gaveWay,
  leastPlan,
  useDraft,
  wishNear,
  wishOf,
} from "./draft.ts";
import { findIdeas, measureIdea, type WallNow } from "./find-ideas.ts";
import { holdingOf } from "./held-store.ts";
import { pictureKey } from "./picture-key.ts";
import { wallOf } from "./wall-store.ts";

const TRIES = 1500;
/** Near given plans there is less to be found. */
const TRIES_NEAR = 600;

/**
 * An idea as a plan: all that is on the bench but its tiers, or the piece and wheel of the wish that a file brought; and names that a
 * person reads, in their language.
 */
function useMaking() {
  const words = useWords(ideasWords);
  return (base: Plan, tiers: readonly Tier[], kept: number, number: number): Plan => ({
    ...base,
    name: words.name(base.name, String(number)),
    tiers: tiers.map((tier, i) =>
      i < kept ? tier : { ...tier, name: tier.armAngleDeg === 90 ? words.pole : words.ring(String(i + 1)) },
    ),
  });
}

/** Each idea is one plan as long as it is known, by whatever number it is found again: pictures and what is picked stay with it. */
function remembering(studio: Studio, make: (found: Found) => Plan): (found: Found) => Plan {
  const known = new Map(
    [
      ...wallOf(studio)
        .getState()
        .hung.map(({ plan }) => plan),
      ...holdingOf(studio).getState().held,
    ].map((plan) => [pictureKey(plan), plan]),
  );
  const made = new Map<number, Plan>();
  return (found) => {
    let plan = made.get(found.number);
    if (!plan) {
      plan = make(found);
      plan = known.get(pictureKey(plan)) ?? plan;
      made.set(found.number, plan);
    }
    return plan;
  };
}

/** Null where it can't be reckoned, as of a plan that is begun with because it can't be ground as it stands. */
async function minutesOf(plan: Plan, signal: AbortSignal): Promise<number | null> {
  try {
    return (await measureIdea(plan, signal)).minutes;
  } catch (error) {
    if (signal.aborted) throw error;
    return null;
  }
}

export function useSearch() {
  const studio = useStudioStore();
  const wall = wallOf(studio);
  const plan = usePlan();
  const own = useDraft();
  const make = useMaking();
  const job = useJob();
  const start = ({ like, ways, frontCounts }: Beginning, given: GivenWish | null = own.given) => {
    const { work: _, ...bench } = plan;
    const base = given ? planOfIdea(given.wish, [], "") : bench;
    const earlier = wall.getState();
    const seed = earlier.seed + 1;
    const before = earlier.before + earlier.tried;
    const isMine = () => wall.getState().seed === seed;
    const stopped = () => {
      if (isMine() && wall.getState().state === "trying") wall.setState({ state: "stopped" });
    };
    job.start(async (signal) => {
      wall.setState({ state: "trying", seed, before, tried: 0, meeting: 0, gaveWay: null, inTheWay: [] });
      // said the moment it is wished: whatever is still judged for it then is not counted any more
      signal.addEventListener("abort", stopped);
      try {
        const isNear = ways !== "open";
        const near = isNear ? like.map((tiers) => minutesOf({ ...base, tiers }, signal)) : [];
        const least = given ? null : await minutesOf(leastPlan(plan, own), signal);
        const said = given?.wish ?? wishOf(plan, own, least);
        const wish = isNear ? wishNear(said, like, await Promise.all(near)) : said;
        wall.setState({ gaveWay: gaveWay(given ? said : asSaid(said, wish), wish) });
        const kept = wish.keep?.length ?? 0;
        const planOf = remembering(studio, ({ tiers, number }) =>
          make(base, tiers, kept, before + number + 1),
        );
        const axes = { across: wish.across as Axis, up: wish.up as Axis };
        const show = ({ found, edges, tried, meeting }: WallNow) => {
          if (signal.aborted) return;
          const hung = found.map((one) => ({ cell: one.cell, plan: planOf(one), measures: null }));
          wall.setState({ hung, spread: { ...axes, edges }, tried, meeting });
        };
        const tries = isNear ? TRIES_NEAR : TRIES;
        const options = { tries, seed, like, ways, ...(frontCounts ? { frontCounts } : {}) };
        const { ideas, tried, meeting, inTheWay } = await findIdeas(wish, options, signal, show);
        const last = wall.getState().hung;
        const hung = ideas.map(({ measures }, i) => ({ ...last[i], measures }));
        wall.setState({ state: "done", hung, tried, meeting, inTheWay });
      } finally {
        stopped();
      }
    });
  };
  // what was asked for from another place
  useEffect(() => {
    const asked = takeAsked(studio);
    if (!asked) return;
    // it is about what lies on the bench, which a file's wish isn't
    draftOf(studio).setState({ given: null });
    start(asked, null);
  });
  return { job, start };
}
