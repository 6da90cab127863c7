/** Strokes from the person's own test facets: so many strokes made a facet so wide. */
import type { BenchTier } from "../../../core/bench/bench.ts";
import { endsByLooking } from "../../../core/bench/stages/stages.ts";
import { calibrate } from "../../../core/bench/stages/strokes.ts";
import type { Calibration, Stage } from "../../../core/plan/document.ts";
import { COUNTS, RANGES } from "../../../core/plan/limits.ts";
import { Button } from "../../controls/Button.tsx";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { useOutlasting } from "../../shared/use-outlasting.ts";
import { useFormat } from "../../use-format.ts";
import { usePlan, useStudio } from "../../use-studio.ts";
import { MaybeField } from "../parts/MaybeField.tsx";
import { useStages } from "../use-stages.ts";
import { type TestDraft, testOf } from "./test-facet.ts";

function withoutAge({ discStrokes: _now, ...stage }: Stage): Stage {
  return stage;
}

interface TestsProps {
  readonly stage: Stage;
  readonly onRemove: (place: number) => void;
  /** How many strokes the disc has done by now; undefined: as after the last test. */
  readonly onAge: (discStrokes: number | undefined) => void;
}

function Tests({ stage, onRemove, onAge }: TestsProps) {
  const { calibrate: words } = useWords(benchWords);
  const { length, number } = useFormat();
  const { piece, rig } = usePlan();
  const removal = calibrate(stage, piece.diameterMm / 2, rig.lap);
  return (
    <>
      <ul className="bench-lines">
        {(stage.calibration ?? []).map((test, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two tests may be alike in every number
          <li key={i}>
            {words.test(
              test.strokes,
              length(test.fromWidthMm ?? 0),
              length(test.widthMm),
              length(test.diameterMm ?? piece.diameterMm),
            )}{" "}
            {test.discStrokes === undefined ? null : words.onDisc(test.discStrokes)}{" "}
            <Button onPress={() => onRemove(i)}>{words.forget}</Button>
          </li>
        ))}
      </ul>
      {removal ? (
        <p>
          {(removal.wear ? words.resultNow : words.result)(
            number(removal.mm3PerStroke, removal.mm3PerStroke < 0.1 ? 3 : 2),
          )}{" "}
          {removal.wear
            ? Number.isFinite(removal.wear.halfLifeStrokes)
              ? words.wear(number(Number(removal.wear.halfLifeStrokes.toPrecision(2)), 0))
              : words.noWear
            : null}{" "}
          {removal.spread === null
            ? removal.wear
              ? words.twoTests
              : words.oneTest
            : words.spread(number(removal.spread * 100, 0))}
        </p>
      ) : null}
      {removal?.wear ? (
        <MaybeField
          kind="plain"
          digits={0}
          label={words.nowOnDisc}
          value={stage.discStrokes}
          range={RANGES.discStrokes}
          description={words.nowOnDiscHow(number(calibrate(withoutAge(stage), 1)?.discStrokes ?? 0, 0))}
          onChange={onAge}
        />
      ) : null}
    </>
  );
}

/** What a test facet is known by; only strokes and the width that they made must be said. */
const FIELDS = [
  { key: "strokes", says: "strokes", range: RANGES.strokes, isCount: true },
  { key: "widthMm", says: "width", range: RANGES.widthMm, isCount: false },
  { key: "fromWidthMm", says: "from", range: RANGES.widthMm, isCount: false },
  { key: "diameterMm", says: "diameter", range: RANGES.diameterMm, isCount: false },
  { key: "discStrokes", says: "disc", range: RANGES.discStrokes, isCount: true },
] as const;

const NOTHING: TestDraft = {};

/** Figures that were typed before, each as far as it is one. */
function readDraft(data: unknown): TestDraft | null {
  if (typeof data !== "object" || data === null) return null;
  const given = data as Readonly<Record<string, unknown>>;
  return Object.fromEntries(
    FIELDS.map(({ key }) => [key, given[key]]).filter(([, one]) => Number.isFinite(one)),
  );
}

interface EntryProps {
  readonly tier: BenchTier;
  readonly stage: string;
  readonly onAdd: (test: Calibration) => void;
}

function Entry({ tier, stage, onAdd }: EntryProps) {
  const { calibrate: words } = useWords(benchWords);
  const { piece } = usePlan();
  const [draft, setDraft] = useOutlasting(`test-facet-${tier.tier}-${stage}`, NOTHING, readDraft);
  const test = testOf(
    { ...draft, radiusMm: draft.radiusMm ?? tier.setting?.contactRadiusMm },
    piece.diameterMm,
  );
  const isOdd = draft.strokes !== undefined && draft.widthMm !== undefined && test === null;
  return (
    <>
      <div className="bench-fields">
        {FIELDS.map(({ key, says, range, isCount }) => (
          <MaybeField
            key={key}
            kind={isCount ? "plain" : "length"}
            digits={isCount ? 0 : 1}
            label={words[says]}
            value={draft[key]}
            range={range}
            description={words.how[says]}
            onChange={(value) => setDraft({ ...draft, [key]: value })}
          />
        ))}
      </div>
      {isOdd ? <p role="alert">{words.odd}</p> : null}
      <Button
        look="outlined"
        isDisabled={test === null}
        onPress={() => {
          if (!test) return;
          onAdd(test);
          setDraft(NOTHING);
        }}
      >
        {words.add}
      </Button>
    </>
  );
}

export function Calibrate({ stage, tier }: { stage: number; tier: BenchTier }) {
  const { calibrate: words } = useWords(benchWords);
  const { rig } = usePlan();
  const dispatch = useStudio((state) => state.dispatch);
  const stages = useStages(rig);
  const own = stages[stage];
  const tests = own.calibration ?? [];
  const put = (next: Stage) => dispatch({ type: "set-rig", change: { stages: stages.with(stage, next) } });
  const set = (calibration: readonly Calibration[]) => {
    const { calibration: _before, ...bare } = own;
    put(calibration.length > 0 ? { ...bare, calibration } : withoutAge(bare));
  };
  const age = (discStrokes: number | undefined) =>
    put(discStrokes === undefined ? withoutAge(own) : { ...own, discStrokes });
  // A polish ends by inspection, not by a count.
  if (endsByLooking(stages, stage)) return null;
  return (
    <details className="bench-fold">
      <summary>{words.title(own.name)}</summary>
      <p className="soft">{words.what}</p>
      <Tests stage={own} onAge={age} onRemove={(place) => set(tests.filter((_, i) => i !== place))} />
      {tests.length < COUNTS.calibrations ? (
        <Entry tier={tier} stage={own.id} onAdd={(test) => set([...tests, test])} />
      ) : null}
      <p className="small soft">{words.wearHow}</p>
    </details>
  );
}
