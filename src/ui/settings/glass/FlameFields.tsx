/** What the flame left in the piece, off unless asked for: a skin that sways, tiny bubbles all through the glass. */
import type { Piece, SeedBubbles, SkinWaves } from "../../../core/plan/document.ts";
import { RANGES } from "../../../core/plan/limits.ts";
import type { Change } from "../../../state/commands.ts";
import { parseAngle, parseNumber } from "../../../words/format.ts";
import { Button } from "../../controls/Button.tsx";
import { NumberField } from "../../controls/NumberField.tsx";
import { Toggle } from "../../controls/Toggle.tsx";
import { glassColourWords } from "../../messages/glass-colour.ts";
import { useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";
import { LengthField } from "../LengthField.tsx";

const FIRST_SLOPE_DEG = 0.5;
/** From crest to crest, as a share of the piece's width. */
const FIRST_SHARE = 0.25;

const FIRST_SEEDS: SeedBubbles = { count: 60, diameterMm: 0.2 };

const anotherSeed = (seed = 1): number => (seed + 1) % RANGES.seed.max;

function WaveFields({ waviness, onChange }: { waviness: SkinWaves; onChange: (next: SkinWaves) => void }) {
  const words = useWords(glassColourWords).flame;
  const { number } = useFormat();
  return (
    <>
      <div className="fields">
        <NumberField
          label={words.slope}
          value={waviness.slopeDeg}
          min={RANGES.waveSlopeDeg.min}
          max={RANGES.waveSlopeDeg.max}
          step={0.1}
          format={(deg) => `${number(deg, 1)}°`}
          parse={parseAngle}
          onChange={(slopeDeg) => onChange({ ...waviness, slopeDeg })}
        />
        <LengthField
          label={words.across}
          range={RANGES.waveAcrossMm}
          value={waviness.acrossMm}
          onChange={(acrossMm) => onChange({ ...waviness, acrossMm })}
        />
      </div>
      <Button look="outlined" onPress={() => onChange({ ...waviness, seed: anotherSeed(waviness.seed) })}>
        {words.another}
      </Button>
    </>
  );
}

function SeedFields({ seeds, onChange }: { seeds: SeedBubbles; onChange: (next: SeedBubbles) => void }) {
  const words = useWords(glassColourWords).flame;
  const { number } = useFormat();
  return (
    <>
      <div className="fields">
        <NumberField
          label={words.count}
          value={seeds.count}
          min={RANGES.seedBubbles.min}
          max={RANGES.seedBubbles.max}
          step={10}
          format={(count) => number(count, 0)}
          parse={parseNumber}
          onChange={(count) => onChange({ ...seeds, count: Math.round(count) })}
        />
        <LengthField
          label={words.wide}
          range={RANGES.seedMm}
          digits={2}
          stepMm={0.05}
          value={seeds.diameterMm}
          onChange={(diameterMm) => onChange({ ...seeds, diameterMm })}
        />
      </div>
      <Button look="outlined" onPress={() => onChange({ ...seeds, seed: anotherSeed(seeds.seed) })}>
        {words.otherSeeds}
      </Button>
    </>
  );
}

export function FlameFields({ piece, change }: { piece: Piece; change: (change: Change<Piece>) => void }) {
  const words = useWords(glassColourWords).flame;
  const { waviness, seeds, diameterMm } = piece;
  const first = (): SkinWaves => ({
    slopeDeg: FIRST_SLOPE_DEG,
    acrossMm: Math.max(RANGES.waveAcrossMm.min, Math.round(diameterMm * FIRST_SHARE)),
  });
  return (
    <>
      <h3>{words.title}</h3>
      <p className="soft">{words.intro}</p>
      <Toggle isOn={waviness !== undefined} onChange={(on) => change({ waviness: on ? first() : undefined })}>
        {words.wavy}
      </Toggle>
      {waviness ? <WaveFields waviness={waviness} onChange={(next) => change({ waviness: next })} /> : null}
      <Toggle isOn={seeds !== undefined} onChange={(on) => change({ seeds: on ? FIRST_SEEDS : undefined })}>
        {words.seeds}
      </Toggle>
      {seeds ? <SeedFields seeds={seeds} onChange={(next) => change({ seeds: next })} /> : null}
    </>
  );
}
