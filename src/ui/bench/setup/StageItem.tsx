/** One abrasive. A grit number is only taken together with its scale, and what it means on other scales is said. */
import { damageGrains, damageUm } from "../../../core/bench/stages/default-stages.ts";
import { GRIT_TABLES, grainOfGrit, gritsOf, sizesOfNumber } from "../../../core/bench/stages/grits.ts";
import { BOND_KINDS, type Bond } from "../../../core/plan/bonds.ts";
import type { Finish, GritScale, Stage } from "../../../core/plan/document.ts";
import { RANGES } from "../../../core/plan/limits.ts";
import { Actions } from "../../controls/Actions.tsx";
import { Choice } from "../../controls/Choice.tsx";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { NameField } from "../../plan/recipe/NameField.tsx";
import { useFormat } from "../../use-format.ts";
import { LengthField, PlainField } from "../parts/fields.tsx";

interface StageProps {
  readonly stage: Stage;
  readonly place: number;
  readonly isLast: boolean;
  /** The face that it leaves, as stated or by its place. */
  readonly leaves: Finish;
  readonly onChange: (stage: Stage) => void;
  readonly onMove: (to: number) => void;
  readonly onRemove: () => void;
}

const MICRONS = "um";
const FINISHES: readonly Finish[] = ["ground", "prepolished", "polished"];
const UNSAID = "unsaid";
type Held = Bond | typeof UNSAID;
const HELD: readonly Held[] = [UNSAID, ...BOND_KINDS];

function withBond({ bond: _asItWas, ...stage }: Stage, bond: Held): Stage {
  return bond === UNSAID ? stage : { ...stage, bond };
}
const plainUm = (um: number): string => String(Number(um.toPrecision(3)));

/** The stage with its grain given in micrometres, a scale's number forgotten. */
function withGrain({ grit: _asItWas, ...stage }: Stage, grainUm: number): Stage {
  return { ...stage, grainUm };
}

function withGrit(stage: Stage, scale: GritScale, number: number): Stage {
  const grainUm = grainOfGrit(scale, number);
  return grainUm === null ? stage : { ...stage, grainUm, grit: { scale, number } };
}

/** The number of a scale whose grain is nearest. */
const nearestGrit = (scale: GritScale, grainUm: number): number =>
  [...gritsOf(scale)].sort(
    (a, b) =>
      Math.abs(Math.log((grainOfGrit(scale, a) ?? 1) / grainUm)) -
      Math.abs(Math.log((grainOfGrit(scale, b) ?? 1) / grainUm)),
  )[0];

function Grain({ stage, onChange }: Pick<StageProps, "stage" | "onChange">) {
  const { stages: words } = useWords(benchWords);
  const { grit } = stage;
  const other = grit ? sizesOfNumber(grit.number).filter(({ scale }) => scale !== grit.scale) : [];
  return (
    <>
      <Choice
        label={words.scale}
        value={grit?.scale ?? MICRONS}
        options={[
          { id: MICRONS, words: words.inMicrons },
          ...GRIT_TABLES.map((table) => ({ id: table.scale, words: words.scales[table.scale] })),
        ]}
        onChange={(scale) =>
          onChange(
            scale === MICRONS
              ? withGrain(stage, stage.grainUm)
              : withGrit(stage, scale as GritScale, nearestGrit(scale as GritScale, stage.grainUm)),
          )
        }
      />
      {grit ? (
        <Choice
          label={words.gritNumber}
          value={String(grit.number)}
          options={gritsOf(grit.scale).map((n) => ({
            id: String(n),
            words: String(n),
            detail: `${grainOfGrit(grit.scale, n)} µm`,
          }))}
          onChange={(number) => onChange(withGrit(stage, grit.scale, Number(number)))}
        />
      ) : (
        <PlainField
          label={words.grain}
          value={stage.grainUm}
          range={RANGES.grainUm}
          digits={1}
          unit="µm"
          onChange={(um) => onChange(withGrain(stage, um))}
        />
      )}
      {grit ? (
        <p className="small soft bench-wide">
          {words.means(String(grit.number), words.scales[grit.scale], plainUm(stage.grainUm))}{" "}
          {other.length > 0
            ? words.elsewhere(
                other.map(({ scale, um }) => `${plainUm(um)} µm (${words.scales[scale]})`).join(", "),
              )
            : null}
        </p>
      ) : null}
    </>
  );
}

export function StageItem({ stage, place, isLast, leaves, onChange, onMove, onRemove }: StageProps) {
  const { stages: words, finishes } = useWords(benchWords);
  const { number } = useFormat();
  const isRule = stage.damageUm === undefined;
  return (
    <li className="bench-stage">
      <div className="bench-stage-head">
        <span className="bench-place" aria-hidden="true">
          {place + 1}
        </span>
        <NameField
          className="bench-stage-name"
          label={words.name}
          value={stage.name}
          placeholder={words.newName}
          onChange={(name) => onChange({ ...stage, name })}
        />
        <Actions
          label={words.actions(stage.name)}
          shown={words.more}
          actions={[
            { id: "earlier", words: words.coarser, isDisabled: place === 0, run: () => onMove(place - 1) },
            { id: "later", words: words.finer, isDisabled: isLast, run: () => onMove(place + 1) },
            { id: "remove", words: words.remove, run: onRemove },
          ]}
        />
      </div>
      <div className="bench-fields">
        <Grain stage={stage} onChange={onChange} />
        <Choice<Held>
          label={words.bond}
          value={stage.bond ?? UNSAID}
          options={HELD.map((id) => ({
            id,
            words: words.bonds[id],
            detail: words.bondDetail[id],
          }))}
          onChange={(bond) => onChange(withBond(stage, bond))}
        />
        <PlainField
          label={words.damage}
          value={damageUm(stage)}
          range={RANGES.damageUm}
          digits={1}
          unit="µm"
          description={isRule ? words.damageRule(number(damageGrains(stage), 1)) : words.damageOwn}
          onChange={(um) => onChange({ ...stage, damageUm: um })}
        />
        <LengthField
          label={words.disc}
          value={stage.discMm ?? 0}
          range={RANGES.discMm}
          step={0.5}
          description={words.discHow}
          onChange={(discMm) => onChange({ ...stage, discMm })}
        />
        <Choice<Finish>
          label={words.leaves}
          value={leaves}
          options={FINISHES.map((id) => ({
            id,
            words: finishes[id],
            ...(id === leaves ? { detail: stage.leaves ? words.leavesOwn : words.leavesByPlace } : {}),
          }))}
          onChange={(face) => onChange({ ...stage, leaves: face })}
        />
      </div>
    </li>
  );
}
