/** The search that fills the wall, for the plan on the bench and the wish as it stands. */
import { useEffect } from "react";
import type { IdeasAnswer } from "../../core/ideas/answer.ts";
import type { Plan, Tier } from "../../core/plan/document.ts";
import { useJob } from "../look/use-job.ts";
import { ideasWords } from "../messages/ideas.ts";
import { useWords } from "../messages/words.tsx";
import { useStudioStore } from "../studio.ts";
import { usePlan } from "../use-studio.ts";
import { type Beginning, takeAsked } from "./asked.ts";
import { leastPlan, useDraft, wishOf } from "./draft.ts";
import { findIdeas, measureIdea, type WallNow } from "./find-ideas.ts";
import { wall } from "./wall-store.ts";

const TRIES = 1500;
/** Near given plans there is less to be found. */
const TRIES_NEAR = 600;

/** An idea as a plan: all that is on the bench but its tiers, and names that a person reads, in their language. */
function useMaking() {
  const words = useWords(ideasWords);
  const { work: _, ...bench } = usePlan();
  return (tiers: readonly Tier[], kept: number, number: number): Plan => ({
    ...bench,
    name: words.name(bench.name, String(number)),
    tiers: tiers.map((tier, i) =>
      i < kept ? tier : { ...tier, name: tier.armAngleDeg === 90 ? words.pole : words.ring(String(i + 1)) },
    ),
  });
}

export function useSearch() {
  const studio = useStudioStore();
  const plan = usePlan();
  const own = useDraft();
  const make = useMaking();
  const job = useJob();
  const start = ({ like, ways, frontCounts }: Beginning) => {
    const seed = wall.getState().seed + 1;
    wall.setState({ seed, answer: null });
    job.start(async (signal, onShare) => {
      const { minutes } = await measureIdea(leastPlan(plan, own), signal);
      const wish = wishOf(plan, own, minutes);
      const kept = wish.keep?.length ?? 0;
      const show = (now: WallNow, given: IdeasAnswer | null) =>
        wall.setState({
          hung: now.found.map(({ cell, tiers, number }) => ({ cell, plan: make(tiers, kept, number + 1) })),
          tried: now.tried,
          meeting: now.meeting,
          answer: given,
        });
      let last: WallNow = { found: [], tried: 0, meeting: 0 };
      const tries = ways === "open" ? TRIES : TRIES_NEAR;
      const options = { tries, seed, like, ways, ...(frontCounts ? { frontCounts } : {}) };
      const answer = await findIdeas(wish, options, signal, (now, share) => {
        if (signal.aborted) return;
        last = now;
        show(now, null);
        onShare(share);
      });
      show({ ...last, tried: answer.tried, meeting: answer.meeting }, answer);
    });
  };
  // what was asked for from another place
  useEffect(() => {
    const asked = takeAsked(studio);
    if (asked) start(asked);
  });
  return { job, start };
}
