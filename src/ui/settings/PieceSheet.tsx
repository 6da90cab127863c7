/** The piece and the wheel: size, glass, what holds it, stops, the ink mark, what is inside. */
import type { OwnGlass, Piece } from "../../core/plan/document.ts";
import { RANGES, type Range } from "../../core/plan/limits.ts";
import { evenCounts, stopsOf } from "../../core/plan/place.ts";
import { toleranceOf } from "../../core/plan/solve.ts";
import type { Change } from "../../state/commands.ts";
import { parseAngle, parseNumber } from "../../words/format.ts";
import { Button } from "../controls/Button.tsx";
import { NumberField } from "../controls/NumberField.tsx";
import { Pick } from "../controls/Pick.tsx";
import { planWords } from "../messages/plan.ts";
import { useWords } from "../messages/words.tsx";
import { NameField } from "../plan/recipe/NameField.tsx";
import { openSheet, screenOf } from "../shared/screen.ts";
import { type Studio, useStudioStore } from "../studio.ts";
import { useFormat } from "../use-format.ts";
import { usePlan, useStudio } from "../use-studio.ts";
import { LengthField } from "./LengthField.tsx";
import "./settings.css";
import { GLASS_NAMES } from "../../core/optics/glasses.ts";

const BOROSILICATE_LIKE: OwnGlass = { name: "", nd: 1.473, vd: 65, densityGcm3: 2.23 };
const FIRST_DOP_SHARE = 0.4;

interface PartProps {
  readonly piece: Piece;
  readonly change: (change: Change<Piece>) => void;
}

function Diameters({ piece, change }: PartProps) {
  const words = useWords(planWords).piece;
  const others = piece.otherDiametersMm ?? [];
  const setOthers = (next: readonly number[]) =>
    change({ otherDiametersMm: next.length > 0 ? next : undefined });
  return (
    <>
      <LengthField
        label={words.diameter}
        range={RANGES.diameterMm}
        value={piece.diameterMm}
        onChange={(diameterMm) => change({ diameterMm })}
      />
      {others.map((mm, i) => (
        // Measurements have no name but their place.
        // biome-ignore lint/suspicious/noArrayIndexKey: as above
        <div className="row" key={i}>
          <LengthField
            label={words.otherDiameter(i + 2)}
            range={RANGES.diameterMm}
            value={mm}
            onChange={(next) => setOthers(others.map((old, k) => (k === i ? next : old)))}
          />
          <Button onPress={() => setOthers(others.filter((_, k) => k !== i))}>{words.removeDiameter}</Button>
        </div>
      ))}
      {others.length < 2 ? (
        <Button look="outlined" onPress={() => setOthers([...others, piece.diameterMm])}>
          {words.addDiameter}
        </Button>
      ) : null}
    </>
  );
}

function GlassNumber({
  label,
  value,
  range,
  digits,
  unit,
  onChange,
}: {
  label: string;
  value: number;
  range: Range;
  digits: number;
  unit?: string;
  onChange: (value: number) => void;
}) {
  const { number } = useFormat();
  return (
    <NumberField
      label={label}
      value={value}
      min={range.min}
      max={range.max}
      step={10 ** -digits}
      format={(shown) => number(shown, digits)}
      parse={parseNumber}
      unit={unit}
      onChange={onChange}
    />
  );
}

function GlassFields({ piece, change }: PartProps) {
  const words = useWords(planWords).piece;
  const { glass } = piece;
  const kind = typeof glass === "string" ? glass : "own";
  const own = typeof glass === "string" ? null : glass;
  const setOwn = (fields: Partial<OwnGlass>) => change({ glass: { ...(own as OwnGlass), ...fields } });
  return (
    <>
      <Pick
        label={words.glass}
        value={kind}
        options={([...GLASS_NAMES, "own"] as const).map((id) => ({
          id,
          words: id === "own" ? words.ownGlass : words.glasses[id],
        }))}
        onChange={(next) =>
          change({
            glass: next === "own" ? { ...BOROSILICATE_LIKE, name: words.ownGlass } : next,
          })
        }
      />
      {own ? (
        <div className="fields">
          <div>
            <span className="field-label" aria-hidden="true">
              {words.glassName}
            </span>
            <NameField
              label={words.glassName}
              value={own.name}
              placeholder={words.ownGlass}
              onChange={(name) => setOwn({ name })}
            />
          </div>
          <GlassNumber
            label={words.nd}
            value={own.nd}
            range={RANGES.nd}
            digits={4}
            onChange={(nd) => setOwn({ nd })}
          />
          <GlassNumber
            label={words.vd}
            value={own.vd}
            range={RANGES.vd}
            digits={1}
            onChange={(vd) => setOwn({ vd })}
          />
          <GlassNumber
            label={words.density}
            value={own.densityGcm3}
            range={RANGES.densityGcm3}
            digits={2}
            unit="g/cm³"
            onChange={(densityGcm3) => setOwn({ densityGcm3 })}
          />
        </div>
      ) : null}
    </>
  );
}

function DopFields({ piece, change }: PartProps) {
  const words = useWords(planWords).piece;
  const { dop } = piece;
  return (
    <>
      <Pick
        label={words.dop}
        value={dop?.side ?? "none"}
        options={[
          { id: "none", words: words.noDop },
          { id: "back", words: words.dopBack },
          { id: "front", words: words.dopFront },
        ]}
        onChange={(side) =>
          change({
            dop:
              side === "none"
                ? undefined
                : {
                    diameterMm: Math.round(piece.diameterMm * FIRST_DOP_SHARE),
                    ...dop,
                    side: side as "front" | "back",
                  },
          })
        }
      />
      {dop ? (
        <LengthField
          label={words.dopDiameter}
          range={RANGES.sizeMm}
          value={dop.diameterMm}
          onChange={(diameterMm) => change({ dop: { ...dop, diameterMm } })}
        />
      ) : null}
    </>
  );
}

const FIRST_STOPS = 96;

function WheelFields() {
  const words = useWords(planWords).piece;
  const plan = usePlan();
  const dispatch = useStudio((state) => state.dispatch);
  const { number } = useFormat();
  const { wheelStops } = plan.rig;
  const shown = stopsOf(plan, "front");
  const setStops = (stops: number | null) =>
    void dispatch({ type: "set-rig", change: { wheelStops: stops } });
  return (
    <>
      <Pick
        label={words.wheel}
        value={wheelStops === null ? "free" : "stops"}
        options={[
          { id: "stops", words: words.wheelKind.stops },
          { id: "free", words: words.wheelKind.free },
        ]}
        onChange={(kind) => setStops(kind === "free" ? null : FIRST_STOPS)}
      />
      {wheelStops === null ? null : (
        <NumberField
          label={words.stops}
          value={wheelStops}
          min={RANGES.wheelStops.min}
          max={RANGES.wheelStops.max}
          step={1}
          format={(stops) => number(stops, 0)}
          parse={(text) => {
            const stops = parseNumber(text);
            return stops !== null && Number.isInteger(stops) ? stops : null;
          }}
          description={words.divides(
            evenCounts(shown ?? wheelStops)
              .filter((count) => count >= 3 && count <= 120)
              .join(", "),
          )}
          onChange={setStops}
        />
      )}
    </>
  );
}

/** Beside the piece, where one sees what one does. */
function editBeside(studio: Studio, part: "editsInside" | "editsGlass"): void {
  const { place, go } = studio.getState();
  openSheet(studio, null);
  if (place === "bench" || place === "ideas") go("plan");
  screenOf(studio).setState({ [part]: true });
}

export default function PieceSheet() {
  const studio = useStudioStore();
  const words = useWords(planWords).piece;
  const format = useFormat();
  const plan = usePlan();
  const dispatch = useStudio((state) => state.dispatch);
  const change = (fields: Change<Piece>) => void dispatch({ type: "set-piece", change: fields });
  const parts = { piece: plan.piece, change };
  return (
    <>
      <Diameters {...parts} />
      <GlassFields {...parts} />
      <DopFields {...parts} />
      <WheelFields />
      <NumberField
        label={words.inkMark}
        value={plan.piece.inkMarkDeg ?? 0}
        min={RANGES.turnDeg.min}
        max={RANGES.turnDeg.max}
        step={1}
        format={(deg) => `${format.number(deg, Number.isInteger(deg) ? 0 : 1)}°`}
        parse={parseAngle}
        description={words.inkHint}
        onChange={(inkMarkDeg) => change({ inkMarkDeg })}
      />
      <LengthField
        label={words.tolerance}
        range={{ min: 0.001, max: RANGES.toleranceMm.max }}
        digits={3}
        stepMm={0.01}
        value={toleranceOf(plan)}
        description={words.toleranceHint}
        onChange={(toleranceMm) => void dispatch({ type: "set-tolerance", toleranceMm })}
      />
      <Button look="outlined" onPress={() => editBeside(studio, "editsGlass")}>
        {words.editGlass}
      </Button>
      <Button look="outlined" onPress={() => editBeside(studio, "editsInside")}>
        {words.editInside}
      </Button>
    </>
  );
}
