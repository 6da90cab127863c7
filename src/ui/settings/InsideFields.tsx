/** What is inside the glass: each design with its few numbers, place and colour. */

import { lazy, Suspense, useMemo } from "react";
import { rangeWithin } from "../../core/check/inside-fits.ts";
import { type Field, PLACE } from "../../core/inside/fields.ts";
import { isMelted, MELT_IF_SAID, USUAL } from "../../core/inside/melt.ts";
import type { InsideKind } from "../../core/inside/record.ts";
import { INSIDE, INSIDE_FIELDS, INSIDE_KINDS } from "../../core/inside/records.ts";
import type { InsideDesign, Piece } from "../../core/plan/document.ts";
import { COUNTS, RANGES, type Range } from "../../core/plan/limits.ts";
import type { Change } from "../../state/commands.ts";
import { parseNumber } from "../../words/format.ts";
import { Actions } from "../controls/Actions.tsx";
import { Button } from "../controls/Button.tsx";
import { NumberField } from "../controls/NumberField.tsx";
import { Toggle } from "../controls/Toggle.tsx";
import { insideWords } from "../messages/inside.ts";
import { planWords } from "../messages/plan.ts";
import { useWords } from "../messages/words.tsx";
import { useFormat } from "../use-format.ts";
import { ColorField } from "./ColorField.tsx";
import { LengthField } from "./LengthField.tsx";
import "./settings.css";

const PhotoPart = lazy(() => import("./photo/PhotoPart.tsx"));

/** A first design of a kind, if it begins with numbers alone; a picture comes with a photograph. */
function firstDesign(kind: InsideKind, diameterMm: number): InsideDesign | undefined {
  return INSIDE[kind].first?.((part) => Math.round(diameterMm * part * 2) / 2 || 0.5);
}
const KINDS = INSIDE_KINDS.filter((kind) => INSIDE[kind].first);

const fieldsOf = (kind: InsideKind): readonly [string, Field][] => Object.entries(INSIDE_FIELDS[kind]);
/** What a number of a design is, also where it is left out and a form offers it; undefined where it is not to be shown. */
const numberOf = (design: InsideDesign, name: string, field: Field): number | undefined => {
  if (field.type !== "mm" && field.type !== "number") return undefined;
  const value = (design as unknown as Readonly<Record<string, unknown>>)[name];
  return typeof value === "number" ? value : field.usual;
};

/** A design without what makes it melt into the glass. */
const unmelted = (design: InsideDesign): InsideDesign =>
  Object.fromEntries(
    Object.entries(design).filter(([name]) => name !== "vein" && !Object.hasOwn(MELT_IF_SAID, name)),
  ) as unknown as InsideDesign;

/** An open range starts a little above its end: a field can't say "more than 0". */
const closed = (range: Range): Range => (range.openMin ? { min: 0.01, max: range.max } : range);

/** What of each length this piece has room for, all else of the design as it is: by field, `up` for its place along the axis. */
function roomOf(piece: Piece, design: InsideDesign): ReadonlyMap<string, Range> {
  const withField = (fields: object) => ({ ...design, ...fields }) as InsideDesign;
  const [x, y, z] = design.atMm ?? [0, 0, 0];
  const up = rangeWithin(piece, z, (mm) => withField({ atMm: [x, y, mm] }), RANGES.offsetMm);
  const lengths = fieldsOf(design.kind).flatMap(([name, field]): [string, Range][] => {
    const at = numberOf(design, name, field);
    if (field.type !== "mm" || at === undefined) return [];
    return [[name, rangeWithin(piece, at, (mm) => withField({ [name]: mm }), closed(field.range))]];
  });
  return new Map([["up", up], ...lengths]);
}

interface DesignProps {
  readonly piece: Piece;
  readonly design: InsideDesign;
  readonly onChange: (design: InsideDesign) => void;
  readonly onRemove: () => void;
}

/** What is one way or another of a design. */
function DesignSwitches({ design, onChange }: Pick<DesignProps, "design" | "onChange">) {
  const own = useWords(insideWords);
  const words = useWords(planWords).piece;
  const set = (fields: object) => onChange({ ...design, ...fields } as InsideDesign);
  return (
    <>
      {design.kind === "picture" ? (
        <Toggle
          isOn={design.shape === "core"}
          onChange={(isCore) => set({ shape: isCore ? "core" : "disc" })}
        >
          {words.pictureOnBall}
        </Toggle>
      ) : null}
      {design.kind === "bubbles" ? (
        <Toggle
          isOn={design.shape === "ring"}
          onChange={(isRing) => set({ shape: isRing ? "ring" : "chain" })}
        >
          {own.inRing}
        </Toggle>
      ) : null}
      {design.kind === "ribbon" || design.kind === "petals" ? (
        <Toggle
          isOn={isMelted(design)}
          onChange={(melts) => onChange(melts ? { ...design, ...USUAL } : unmelted(design))}
        >
          {own.isMelted}
        </Toggle>
      ) : null}
      {design.kind === "core" || design.kind === "bubble" ? (
        <Toggle isOn={design.sizeAs === "seen"} onChange={(seen) => set({ sizeAs: seen ? "seen" : "real" })}>
          {words.seen}
        </Toggle>
      ) : null}
    </>
  );
}

function DesignFields({ piece, design, onChange, onRemove }: DesignProps) {
  const own = useWords(insideWords);
  const words = useWords(planWords).piece;
  const { number } = useFormat();
  const set = (fields: object) => onChange({ ...design, ...fields } as InsideDesign);
  const [x, y, z] = design.atMm ?? [0, 0, 0];
  const room = useMemo(() => roomOf(piece, design), [piece, design]);
  const { moves } = INSIDE[design.kind];
  const numberField = (name: string, field: Field) => {
    const value = numberOf(design, name, field);
    if ((field.type !== "mm" && field.type !== "number") || value === undefined || name in PLACE) return null;
    const label = own.fields[name as keyof typeof own.fields];
    if (field.type === "mm")
      return (
        <LengthField
          key={name}
          label={label}
          range={room.get(name) ?? closed(field.range)}
          value={value}
          onChange={(mm) => set({ [name]: mm })}
        />
      );
    const isWhole = field.range.integer === true;
    return (
      <NumberField
        key={name}
        label={label}
        value={value}
        min={field.range.min}
        max={field.range.max}
        step={field.step ?? 1}
        format={(shown) => number(shown, isWhole ? 0 : 2)}
        parse={parseNumber}
        onChange={(next) => set({ [name]: isWhole ? Math.round(next) : next })}
      />
    );
  };
  const degrees = (key: "tiltDeg" | "turnDeg", range: Range) => (
    <NumberField
      label={own.fields[key]}
      value={design[key] ?? 0}
      min={range.min}
      max={range.max}
      step={5}
      format={(shown) => `${number(shown, 0)}°`}
      parse={(text) => parseNumber(text.replace("°", ""))}
      onChange={(next) => set({ [key]: next })}
    />
  );
  return (
    <li className="design">
      <div className="row">
        <h3>{words.insideKinds[design.kind]}</h3>
        <Button onPress={onRemove}>{words.removeDiameter}</Button>
      </div>
      <div className="fields">
        {fieldsOf(design.kind).map(([name, field]) => numberField(name, field))}
        {moves.includes("up") ? (
          <LengthField
            label={own.fields.up}
            range={room.get("up") ?? RANGES.offsetMm}
            value={z}
            onChange={(mm) => set({ atMm: [x, y, mm] })}
          />
        ) : null}
        {moves.includes("tiltDeg") ? degrees("tiltDeg", RANGES.tiltDeg) : null}
        {moves.includes("turnDeg") ? degrees("turnDeg", RANGES.turnDeg) : null}
        {"rgb" in design ? (
          <ColorField label={words.colour} value={design.rgb} onChange={(rgb) => set({ rgb })} />
        ) : null}
        {"rgb2" in design && design.rgb2 ? (
          <ColorField label={words.secondColour} value={design.rgb2} onChange={(rgb2) => set({ rgb2 })} />
        ) : null}
      </div>
      <DesignSwitches design={design} onChange={onChange} />
    </li>
  );
}

export default function InsideFields({
  piece,
  change,
}: {
  piece: Piece;
  change: (change: Change<Piece>) => void;
}) {
  const words = useWords(planWords).piece;
  const inside = piece.inside ?? [];
  const set = (next: readonly InsideDesign[]) => change({ inside: next.length > 0 ? next : undefined });
  return (
    <section>
      <h2 className="field-label">{words.inside}</h2>
      {inside.length === 0 ? <p>{words.insideNone}</p> : null}
      <ul className="designs">
        {inside.map((design, i) => (
          <DesignFields
            // Designs have no name but their place.
            // biome-ignore lint/suspicious/noArrayIndexKey: as above
            key={`${i} ${design.kind}`}
            piece={piece}
            design={design}
            onChange={(next) => set(inside.map((old, k) => (k === i ? next : old)))}
            onRemove={() => set(inside.filter((_, k) => k !== i))}
          />
        ))}
      </ul>
      {inside.length < COUNTS.inside ? (
        <Actions
          label={words.addInside}
          actions={KINDS.map((kind) => ({
            id: kind,
            words: words.insideKinds[kind],
            run: () => {
              const first = firstDesign(kind, piece.diameterMm);
              if (first) set([...inside, first]);
            },
          }))}
        />
      ) : null}
      <Suspense fallback={null}>
        <PhotoPart />
      </Suspense>
    </section>
  );
}
