/** The price: what is asked for, what it comes to and how far the hours stray, beside another plan, and as a quote on paper. */
import { useState } from "react";
import { type Priced, priceOf } from "../../../core/offer/offer.ts";
import type { TimeSpread } from "../../../core/offer/time-spread.ts";
import type { Plan } from "../../../core/plan/document.ts";
import { samePiece } from "../../../state/derived.ts";
import { moneyIn } from "../../../words/currency.ts";
import { offerWordsDe } from "../../../words/de/offer.ts";
import { offerWordsEn } from "../../../words/en/offer.ts";
import { offerRows, offerSaid } from "../../../words/offer.ts";
import { Button } from "../../controls/Button.tsx";
import { benchWords } from "../../messages/bench.ts";
import { priceWords } from "../../messages/price.ts";
import { shellWords } from "../../messages/shell.ts";
import { useLanguage, useWords } from "../../messages/words.tsx";
import { openSheet } from "../../shared/screen.ts";
import { useStudioStore } from "../../studio.ts";
import { useFormat } from "../../use-format.ts";
import { usePlan } from "../../use-studio.ts";
import { timeInWords } from "../parts/time.ts";
import { BesidePart } from "./BesidePart.tsx";
import { OfferFields } from "./OfferFields.tsx";
import { QuotePart } from "./QuotePart.tsx";
import { useStraying, useWeighed } from "./use-weighed.ts";
import "./price.css";

const OFFER_WORDS = { en: offerWordsEn, de: offerWordsDe } as const;

function Reckoning({ plan, priced }: { plan: Plan; priced: Priced }) {
  const language = useLanguage();
  const { locale } = useFormat();
  const words = OFFER_WORDS[language];
  return (
    <>
      <table className="price-table">
        <tbody>
          {offerRows(plan, priced, words, locale).map(({ id, what, much }) => (
            <tr key={id} data-row={id}>
              <th scope="row">{what}</th>
              <td>{much}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {offerSaid(plan, priced, words).map((said) => (
        <p key={said} className="soft">
          {said}
        </p>
      ))}
    </>
  );
}

function Straying({ plan, isWanted }: { plan: Plan; isWanted: boolean }) {
  const words = useWords(priceWords);
  const bench = useWords(benchWords);
  const { number, locale } = useFormat();
  const { share, spread, failed } = useStraying(isWanted);
  if (failed) return <p role="alert">{words.strayFailed}</p>;
  if (share !== null) return <p className="waiting">{words.straying(number(100 * share, 0))}</p>;
  if (spread === null) return null;
  const { minutes, pieces, lost }: TimeSpread = spread;
  if (minutes === null) return <p className="soft">{words.allLost}</p>;
  const [low, high] = minutes.map((one) => timeInWords(one, bench.time));
  const half = (minutes[1] - minutes[0]) / 2;
  const priceAt = (one: number): string => {
    if (!plan.offer) return "";
    const { price } = priceOf(plan.offer, plan.piece, { minutes: one, guesses: [] });
    return price === null ? "" : moneyIn(locale, plan.offer.currency)(price);
  };
  return (
    <>
      <p>
        {low === high
          ? words.hoursNear(low, number(Math.max(1, Math.ceil(half)), 0), number(pieces, 0))
          : words.hours(low, high, number(pieces, 0))}
      </p>
      {plan.offer ? <p>{words.hoursCost(priceAt(minutes[0]), priceAt(minutes[1]))}</p> : null}
      {lost > 0 ? <p className="soft">{words.lost(number(lost, 0), number(pieces, 0))}</p> : null}
    </>
  );
}

function PricePart() {
  const studio = useStudioStore();
  const words = useWords(priceWords);
  const bench = useWords(benchWords);
  const { menu } = useWords(shellWords);
  const { locale } = useFormat();
  const plan = usePlan();
  const [other, setOther] = useState<Plan | null>(null);
  const { answer, question, error } = useWeighed(samePiece(plan));
  const time = question === samePiece(plan) && answer ? answer.time : null;
  const priced = time && plan.offer ? priceOf(plan.offer, plan.piece, time) : null;
  const total =
    plan.offer && priced && priced.price !== null && priced.minutes !== null
      ? words.total(
          moneyIn(locale, plan.offer.currency)(priced.price),
          timeInWords(priced.minutes, bench.time),
        )
      : words.what;
  return (
    <div className="bench-flow">
      <p className="bench-sentence">{total}</p>
      <div className="bench-two">
        <OfferFields />
        <section className="bench-part" aria-labelledby="offer-comes" aria-busy={time === null}>
          <h2 id="offer-comes">{words.comes}</h2>
          {error ? <p role="alert">{bench.failed}</p> : null}
          {time === null && !error ? <p className="waiting">{bench.counting}</p> : null}
          {plan.offer ? null : <p className="soft">{words.begin}</p>}
          {priced ? <Reckoning plan={plan} priced={priced} /> : null}
          {priced ? (
            <Straying plan={plan} isWanted={priced.minutes !== null && plan.tiers.length > 0} />
          ) : null}
          {priced && priced.price !== null ? (
            <Button look="outlined" onPress={() => openSheet(studio, "customer")}>
              {menu.customer}
            </Button>
          ) : null}
        </section>
      </div>
      <BesidePart weighed={answer} other={other} onOther={setOther} />
      <QuotePart priced={priced} isCounting={plan.offer !== undefined && time === null && !error} />
    </div>
  );
}

export default PricePart;
