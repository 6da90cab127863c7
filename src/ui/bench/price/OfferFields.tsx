/** What the artist asks for: kept in the plan, each field as one step that can be undone. */
import type { Offer } from "../../../core/plan/document.ts";
import { RANGES, type Range } from "../../../core/plan/limits.ts";
import { CURRENCIES, coinDigits, currencyName, moneyIn, usualCurrency } from "../../../words/currency.ts";
import { Button } from "../../controls/Button.tsx";
import { Choice } from "../../controls/Choice.tsx";
import { priceWords } from "../../messages/price.ts";
import { useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";
import { usePlan, useStudio } from "../../use-studio.ts";
import { MaybeField } from "../parts/MaybeField.tsx";
import { lastOffer, rememberOffer } from "./last-offer.ts";

type Amount = "glassPerKg" | "consumables" | "blank";
type Share = "overheadShare" | "taxShare";

/** A share's range as it is typed, in per cent. */
const PERCENT: Range = { min: 100 * RANGES.share.min, max: 100 * RANGES.share.max };

/** Puts a change into the plan's offer. */
export function useChangeOffer(): (change: Partial<Offer>) => void {
  const { offer } = usePlan();
  const { locale } = useFormat();
  const dispatch = useStudio((state) => state.dispatch);
  return (change) => {
    const next = { currency: usualCurrency(locale), hourly: 0, ...offer, ...change };
    const value = Object.fromEntries(Object.entries(next).filter(([, one]) => one !== undefined));
    dispatch({ type: "set-field", path: ["offer"], value });
    rememberOffer(next);
  };
}

function CurrencyChoice() {
  const words = useWords(priceWords);
  const { offer } = usePlan();
  const { locale } = useFormat();
  const change = useChangeOffer();
  const value = offer?.currency ?? usualCurrency(locale);
  const all = CURRENCIES.includes(value) ? CURRENCIES : [value, ...CURRENCIES];
  return (
    <Choice
      label={words.currency}
      value={value}
      options={all.map((id) => ({ id, words: currencyName(locale, id) }))}
      onChange={(currency) => change({ currency })}
    />
  );
}

export function OfferFields() {
  const words = useWords(priceWords);
  const { offer } = usePlan();
  const { locale } = useFormat();
  const change = useChangeOffer();
  const last = offer ? null : lastOffer();
  const currency = offer?.currency ?? usualCurrency(locale);
  const digits = coinDigits(currency);
  const money = { kind: "plain", unit: currency, digits, range: RANGES.amount } as const;
  const amount = (name: Amount, description?: string) => (
    <MaybeField
      {...money}
      label={words[name]}
      value={offer?.[name]}
      description={description}
      onChange={(value) => change({ [name]: value })}
    />
  );
  const share = (name: Share, description: string) => (
    <MaybeField
      kind="plain"
      unit="%"
      digits={(100 * (offer?.[name] ?? 0)) % 1 === 0 ? 0 : 1}
      label={words[name]}
      range={PERCENT}
      value={offer?.[name] === undefined ? undefined : Number((100 * offer[name]).toPrecision(12))}
      description={description}
      onChange={(percent) => change({ [name]: percent === undefined ? undefined : percent / 100 })}
    />
  );
  return (
    <section className="bench-part" aria-labelledby="offer-ask">
      <h2 id="offer-ask">{words.ask}</h2>
      <div className="bench-fields">
        <MaybeField
          {...money}
          label={words.hourly}
          value={offer?.hourly}
          onChange={(hourly) => change({ hourly: hourly ?? 0 })}
        />
        <CurrencyChoice />
        {amount("glassPerKg", words.glassHow)}
        {amount("blank")}
        {amount("consumables", words.consumablesHow)}
        {share("overheadShare", words.overheadHow)}
        {share("taxShare", words.taxHow)}
        <MaybeField
          {...money}
          label={words.roundTo}
          range={{ ...RANGES.roundTo, min: 10 ** -digits }}
          value={offer?.roundTo ?? 1}
          onChange={(roundTo) => change({ roundTo })}
        />
      </div>
      {last ? (
        <Button look="outlined" onPress={() => change(last)}>
          {words.again(moneyIn(locale, last.currency)(last.hourly))}
        </Button>
      ) : null}
    </section>
  );
}
