/** Two plans side by side: what the other takes more, in hours and money, and what it gives for it. */
import { useState } from "react";
import { priceOf } from "../../../core/offer/offer.ts";
import type { Weighed } from "../../../core/offer/weigh.ts";
import type { Plan } from "../../../core/plan/document.ts";
import { coinDigits, moneyIn } from "../../../words/currency.ts";
import { Choice } from "../../controls/Choice.tsx";
import { useKeptPlans } from "../../library/kept-plans.ts";
import { benchWords } from "../../messages/bench.ts";
import { priceWords } from "../../messages/price.ts";
import { useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";
import { usePlan } from "../../use-studio.ts";
import { timeAsSaid, timeInWords } from "../parts/time.ts";
import { useWeighed } from "./use-weighed.ts";

const NONE = "none";

type RowName = keyof typeof import("../../../words/en/price.ts").price.rows;
interface Row {
  readonly name: RowName;
  /** Null where it can't be reckoned. */
  readonly values: readonly [number | null, number | null];
  readonly say: (value: number) => string;
  /** The figure as it is read: a difference is that of two figures as they stand there. */
  readonly asRead: (value: number) => number;
}

const toStep = (step: number) => (value: number) => Math.round(value / step) * step;

function useRows(): (mine: Weighed, theirs: Weighed, other: Plan) => readonly Row[] {
  const { number, locale } = useFormat();
  const bench = useWords(benchWords);
  const plan = usePlan();
  return (mine, theirs, other) => {
    const { offer } = plan;
    const percent = (digits: number) => (value: number) => `${number(100 * value, digits)}\u00a0%`;
    const row = (
      name: RowName,
      of: (one: Weighed) => number | null | undefined,
      say: Row["say"],
      asRead: Row["asRead"],
    ): Row => ({ name, values: [of(mine) ?? null, of(theirs) ?? null], say, asRead });
    const rows = [
      row(
        "hours",
        ({ time }) => time.minutes,
        (value) => timeInWords(value, bench.time),
        timeAsSaid,
      ),
    ];
    if (offer) {
      const money = moneyIn(locale, offer.currency);
      const price = (one: Plan, weighed: Weighed) => priceOf(offer, one.piece, weighed.time).price;
      rows.push({
        name: "price",
        values: [price(plan, mine), price(other, theirs)],
        say: money,
        asRead: toStep(10 ** -coinDigits(offer.currency)),
      });
    }
    rows.push(
      row(
        "grams",
        ({ grams }) => grams,
        (value) => `${number(value, 1)}\u00a0g`,
        toStep(0.1),
      ),
      row(
        "tiers",
        ({ measures }) => measures?.tiers,
        (value) => number(value, 0),
        toStep(1),
      ),
      row(
        "facets",
        ({ measures }) => measures?.facets,
        (value) => number(value, 0),
        toStep(1),
      ),
      row("skin", ({ measures }) => measures?.skinShare, percent(0), toStep(0.01)),
      row("back", ({ measures }) => measures?.back, percent(0), toStep(0.01)),
      row("through", ({ measures }) => measures?.through, percent(0), toStep(0.01)),
      row("sparkle", ({ measures }) => measures && measures.sparkle / 100, percent(1), toStep(0.001)),
    );
    if (plan.piece.inside?.length || other.piece.inside?.length)
      rows.push(
        row(
          "images",
          ({ measures }) => measures?.images,
          (value) => number(value, 0),
          toStep(1),
        ),
      );
    return rows;
  };
}

function SideBySide({ mine, theirs, other }: { mine: Weighed; theirs: Weighed; other: Plan }) {
  const words = useWords(priceWords);
  const bench = useWords(benchWords);
  const rows = useRows()(mine, theirs, other);
  const [a, b] = [mine.time.minutes, theirs.time.minutes];
  const longer = a === null || b === null ? null : timeAsSaid(b) - timeAsSaid(a);
  const said =
    longer === null
      ? null
      : longer === 0
        ? words.costsSame(other.name)
        : (longer > 0 ? words.costsMore : words.costsLess)(
            other.name,
            timeInWords(Math.abs(longer), bench.time),
          );
  const difference = ({ values: [from, to], say, asRead }: Row): string => {
    if (from === null || to === null) return "";
    if (say(from) === say(to)) return words.same;
    const more = asRead(to) - asRead(from);
    return more > 0 ? words.more(say(more)) : words.less(say(-more));
  };
  return (
    <>
      {said ? <p className="bench-sentence">{said}</p> : null}
      <div className="price-wide">
        <table className="price-table price-beside">
          <thead>
            <tr>
              <th scope="col">
                <span className="unseen">{words.columns.what}</span>
              </th>
              <th scope="col">{words.columns.this}</th>
              <th scope="col">{words.columns.other}</th>
              <th scope="col">{words.columns.more}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.name} data-row={row.name}>
                <th scope="row">{words.rows[row.name]}</th>
                {row.values.map((value, i) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: this plan and the other, always in that order
                  <td key={i}>{value === null ? words.unknown : row.say(value)}</td>
                ))}
                <td>{difference(row)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}

export interface BesidePartProps {
  /** Of the plan on the bench. */
  readonly weighed: Weighed | null;
  readonly other: Plan | null;
  readonly onOther: (other: Plan | null) => void;
}

export function BesidePart({ weighed, other, onOther }: BesidePartProps) {
  const words = useWords(priceWords);
  const bench = useWords(benchWords);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [chosen, choose] = useState(NONE);
  const kept = useKeptPlans(setTrouble);
  const theirs = useWeighed(other);
  const take = async (id: string) => {
    const plan = id === NONE ? null : await kept.read(id);
    if (id !== NONE && plan === null) return;
    choose(id);
    onOther(plan);
  };
  const answer = theirs.question === other ? theirs.answer : null;
  return (
    <section className="bench-part" aria-labelledby="offer-two">
      <h2 id="offer-two">{words.two}</h2>
      <Choice
        label={words.other}
        value={chosen}
        options={[{ id: NONE, words: words.none }, ...kept.options]}
        onChange={(id) => void take(id)}
      />
      {kept.options.length === 0 ? <p className="soft">{words.noOther}</p> : null}
      {trouble || theirs.error ? <p role="alert">{trouble ?? bench.failed}</p> : null}
      {other && !answer && !theirs.error ? <p className="waiting">{bench.counting}</p> : null}
      {other && answer && weighed ? <SideBySide mine={weighed} theirs={answer} other={other} /> : null}
    </section>
  );
}
