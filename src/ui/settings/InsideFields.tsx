/** What is inside the glass: each design with its few numbers, place and colour. */

import { formatHex, modeLrgb, modeRgb, useMode as register } from "culori/fn";
import { lazy, Suspense, useMemo } from "react";
import { rangeWithin } from "../../core/check/inside-fits.ts";
import type { InsideDesign, Piece, Rgb } from "../../core/plan/document.ts";
import { COUNTS, RANGES, type Range } from "../../core/plan/limits.ts";
import type { Change } from "../../state/commands.ts";
import { parseNumber } from "../../words/format.ts";
import { Actions } from "../controls/Actions.tsx";
import { Button } from "../controls/Button.tsx";
import { NumberField } from "../controls/NumberField.tsx";
import { Toggle } from "../controls/Toggle.tsx";
import { planWords } from "../messages/plan.ts";
import { useWords } from "../messages/words.tsx";
import { useFormat } from "../use-format.ts";
import { LengthField } from "./LengthField.tsx";
import "./settings.css";

const PhotoPart = lazy(() => import("./photo/PhotoPart.tsx"));

const toLinear = register(modeLrgb);
register(modeRgb);

/** Kinds that are made from numbers alone; a picture comes with a photograph. */
type Kind = Exclude<InsideDesign["kind"], "picture">;
const KINDS: readonly Kind[] = ["core", "bubble", "ribbon", "petals", "backing", "speckle"];

/** A first design of each kind that fits well inside the piece: shares of its diameter, colours of our own. */
function firstDesign(kind: Kind, d: number): InsideDesign {
  const share = (part: number) => Math.round(d * part * 2) / 2 || 0.5;
  switch (kind) {
    case "core":
      return { kind, diameterMm: share(0.3), rgb: [0.03, 0.16, 0.3], opaque: true };
    case "bubble":
      return { kind, diameterMm: share(0.2) };
    case "ribbon":
      return {
        kind,
        widthMm: share(0.25),
        lengthMm: share(0.45),
        thicknessMm: 1,
        turns: 0.75,
        rgb: [0.02, 0.2, 0.26],
        rgb2: [0.75, 0.55, 0.2],
      };
    case "petals":
      return { kind, count: 6, diameterMm: share(0.45), depthMm: share(0.12), rgb: [0.5, 0.06, 0.12] };
    case "backing":
      return { kind, heightMm: share(0.15), rgb: [0.02, 0.02, 0.03] };
    case "speckle":
      return { kind, count: 60, grainMm: 0.5, diameterMm: share(0.5), rgb: [0.7, 0.72, 0.75] };
  }
}

/** Lengths of each kind, with the range the plan's file allows. */
const LENGTHS: Readonly<Record<string, Range>> = {
  diameterMm: RANGES.sizeMm,
  lengthMm: RANGES.sizeMm,
  widthMm: RANGES.sizeMm,
  thicknessMm: RANGES.sizeMm,
  depthMm: RANGES.heightMm,
  heightMm: RANGES.sizeMm,
  grainMm: RANGES.sizeMm,
};
/** An open range starts a little above its end: a field can't say "more than 0". */
const closed = (range: Range): Range => (range.openMin ? { min: 0.01, max: range.max } : range);

function ColorField({ label, value, onChange }: { label: string; value: Rgb; onChange: (rgb: Rgb) => void }) {
  const hex = formatHex({ mode: "lrgb", r: value[0], g: value[1], b: value[2] });
  return (
    <label className="color-field">
      <span className="field-label">{label}</span>
      <input
        type="color"
        value={hex}
        onChange={(event) => {
          const linear = toLinear(event.currentTarget.value);
          if (linear) onChange([linear.r, linear.g, linear.b]);
        }}
      />
    </label>
  );
}

/** What of each length this piece has room for, all else of the design as it is: by field, `up` for its place along the axis. */
function roomOf(piece: Piece, design: InsideDesign): ReadonlyMap<string, Range> {
  const withField = (fields: object) => ({ ...design, ...fields }) as InsideDesign;
  const [x, y, z] = design.atMm ?? [0, 0, 0];
  const lengths = Object.entries(design).filter(([key]) => Object.hasOwn(LENGTHS, key));
  const up = rangeWithin(piece, z, (mm) => withField({ atMm: [x, y, mm] }), RANGES.offsetMm);
  return new Map([
    ["up", up],
    ...lengths.map(([key, mm]): [string, Range] => [
      key,
      rangeWithin(piece, mm, (next) => withField({ [key]: next }), closed(LENGTHS[key])),
    ]),
  ]);
}

interface DesignProps {
  readonly piece: Piece;
  readonly design: InsideDesign;
  readonly onChange: (design: InsideDesign) => void;
  readonly onRemove: () => void;
}

function DesignFields({ piece, design, onChange, onRemove }: DesignProps) {
  const words = useWords(planWords).piece;
  const { number } = useFormat();
  const set = (fields: object) => onChange({ ...design, ...fields } as InsideDesign);
  const [x, y, z] = design.atMm ?? [0, 0, 0];
  const room = useMemo(() => roomOf(piece, design), [piece, design]);
  const plain = (key: "turns" | "count", range: Range, step: number, digits: number, value: number) => (
    <NumberField
      label={words.insideFields[key]}
      value={value}
      min={range.min}
      max={range.max}
      step={step}
      format={(shown) => number(shown, digits)}
      parse={parseNumber}
      onChange={(next) => set({ [key]: digits === 0 ? Math.round(next) : next })}
    />
  );
  const degrees = (key: "tiltDeg" | "turnDeg", range: Range) => (
    <NumberField
      label={words.insideFields[key]}
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
        {Object.keys(design)
          .filter((key) => Object.hasOwn(LENGTHS, key))
          .map((key) => (
            <LengthField
              key={key}
              label={words.insideFields[key as keyof typeof words.insideFields]}
              range={room.get(key) ?? closed(LENGTHS[key])}
              value={(design as unknown as Readonly<Record<string, number>>)[key]}
              onChange={(mm) => set({ [key]: mm })}
            />
          ))}
        {design.kind === "ribbon" ? plain("turns", RANGES.ribbonTurns, 0.25, 2, design.turns) : null}
        {design.kind === "petals" ? plain("count", RANGES.petals, 1, 0, design.count) : null}
        {design.kind === "speckle" ? plain("count", RANGES.speckles, 10, 0, design.count) : null}
        {design.kind === "backing" ? null : (
          <LengthField
            label={words.insideFields.up}
            range={room.get("up") ?? RANGES.offsetMm}
            value={z}
            onChange={(mm) => set({ atMm: [x, y, mm] })}
          />
        )}
        {design.kind === "bubble" || design.kind === "speckle" ? null : degrees("tiltDeg", RANGES.tiltDeg)}
        {design.kind === "bubble" || design.kind === "speckle" ? null : degrees("turnDeg", RANGES.turnDeg)}
        {"rgb" in design ? (
          <ColorField label={words.colour} value={design.rgb} onChange={(rgb) => set({ rgb })} />
        ) : null}
        {"rgb2" in design && design.rgb2 ? (
          <ColorField label={words.secondColour} value={design.rgb2} onChange={(rgb2) => set({ rgb2 })} />
        ) : null}
      </div>
      {design.kind === "picture" ? (
        <Toggle
          isOn={design.shape === "core"}
          onChange={(isCore) => set({ shape: isCore ? "core" : "disc" })}
        >
          {words.pictureOnBall}
        </Toggle>
      ) : null}
      {design.kind === "core" || design.kind === "bubble" ? (
        <Toggle isOn={design.sizeAs === "seen"} onChange={(seen) => set({ sizeAs: seen ? "seen" : "real" })}>
          {words.seen}
        </Toggle>
      ) : null}
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
            run: () => set([...inside, firstDesign(kind, piece.diameterMm)]),
          }))}
        />
      ) : null}
      <Suspense fallback={null}>
        <PhotoPart />
      </Suspense>
    </section>
  );
}
