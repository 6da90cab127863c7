/** What the glass itself looks like: its colour, and the colours of layers under it. */
import { Label } from "react-aria-components/Label";
import { Radio, RadioGroup } from "react-aria-components/RadioGroup";
import { layersOf } from "../../../core/optics/casing.ts";
import { GLASS_COLOUR_NAMES, GLASS_COLOURS, readyColourOf } from "../../../core/optics/glass-colours.ts";
import type { Cased, Piece, Tint } from "../../../core/plan/document.ts";
import { COUNTS, RANGES } from "../../../core/plan/limits.ts";
import type { Change } from "../../../state/commands.ts";
import { Button } from "../../controls/Button.tsx";
import { glassColourWords } from "../../messages/glass-colour.ts";
import { useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";
import { usePlan, useStudio } from "../../use-studio.ts";
import { ColorField } from "../ColorField.tsx";
import { cssColour } from "../GlassPart.tsx";
import { LengthField } from "../LengthField.tsx";
import { FlameFields } from "./FlameFields.tsx";
import { SectionDrawing } from "./SectionDrawing.tsx";
import "./glass.css";

/** Where one begins who mixes a colour of their own. */
const FIRST_OWN: Tint = { rgb: [0.5, 0.3, 0.6], atMm: 10 };
const LEAST_MM = 0.1;
/** A new layer beneath another one, as a share of its width. */
const NEXT_SHARE = 0.7;

interface TintProps {
  readonly tint: Tint | undefined;
  readonly onChange: (tint: Tint | undefined) => void;
}

function Colours({ tint, onChange }: TintProps) {
  const words = useWords(glassColourWords);
  const value = tint ? (readyColourOf(tint) ?? "own") : "clear";
  const entry = (id: string, said: string, shown: Tint | undefined) => (
    <Radio key={id} value={id} className="pick-one glass-pick">
      <span className="glass-dot" style={{ background: cssColour(shown) }} />
      {said}
    </Radio>
  );
  const choose = (id: string) => {
    const ready = GLASS_COLOUR_NAMES.find((name) => name === id);
    onChange(ready ? GLASS_COLOURS[ready] : id === "own" ? tint : undefined);
  };
  // One's own has an entry once it is mixed.
  return (
    <RadioGroup className="pick" value={value} orientation="horizontal" onChange={choose}>
      <Label className="field-label">{words.colour}</Label>
      <span className="pick-row">
        {entry("clear", words.clear, undefined)}
        {GLASS_COLOUR_NAMES.map((name) => entry(name, words.colours[name], GLASS_COLOURS[name]))}
        {value === "own" ? entry("own", words.own, tint) : null}
      </span>
    </RadioGroup>
  );
}

function TintFields({ tint, onChange }: TintProps) {
  const words = useWords(glassColourWords);
  const format = useFormat();
  const { diameterMm } = usePlan().piece;
  return (
    <>
      <Colours tint={tint} onChange={onChange} />
      <div className="fields">
        <ColorField
          label={words.mix}
          value={(tint ?? FIRST_OWN).rgb}
          onChange={(rgb) => onChange({ rgb, atMm: tint?.atMm ?? FIRST_OWN.atMm })}
        />
        {tint ? (
          <LengthField
            label={words.picked}
            range={{ min: LEAST_MM, max: RANGES.sizeMm.max }}
            value={tint.atMm}
            description={words.pickedHint(format.length(diameterMm))}
            onChange={(atMm) => onChange({ ...tint, atMm })}
          />
        ) : null}
      </div>
    </>
  );
}

interface LayerProps {
  readonly piece: Piece;
  readonly layers: readonly Cased[];
  readonly at: number;
  readonly onChange: (layers: readonly Cased[]) => void;
}

/** One layer; the others keep their places from the outside in, whatever is typed. */
function LayerFields({ piece, layers, at, onChange }: LayerProps) {
  const words = useWords(glassColourWords);
  const layer = layers[at];
  const set = (next: Cased) => onChange(layers.map((old, i) => (i === at ? next : old)));
  // The outermost glass is the first.
  const place = String(at + 2);
  const isSame = layers.some(({ diameterMm }, i) => i > at && diameterMm === layer.diameterMm);
  return (
    <li className="design">
      <div className="row">
        <h3>{words.layer(place)}</h3>
        <Button onPress={() => onChange(layers.filter((_, i) => i !== at))}>
          {words.removeLayer(place)}
        </Button>
      </div>
      <LengthField
        label={words.within}
        range={{ min: LEAST_MM, max: piece.diameterMm }}
        value={layer.diameterMm}
        onChange={(diameterMm) => set({ ...layer, diameterMm })}
      />
      {layer.diameterMm >= piece.diameterMm ? <p className="soft">{words.covers}</p> : null}
      {isSame ? <p className="soft">{words.hidden}</p> : null}
      <TintFields tint={layer.tint} onChange={(tint) => set(withTint(layer, tint))} />
    </li>
  );
}

const withTint = ({ diameterMm }: Cased, tint: Tint | undefined): Cased =>
  tint ? { diameterMm, tint } : { diameterMm };

/** Under the innermost layer: clear under a colour, a colour under clear. */
function nextLayer(piece: Piece, layers: readonly Cased[]): Cased {
  const over = layers.at(-1) ?? { diameterMm: piece.diameterMm, tint: piece.tint };
  const diameterMm = Math.max(LEAST_MM, Math.round(over.diameterMm * NEXT_SHARE * 2) / 2);
  return withTint({ diameterMm }, over.tint ? undefined : GLASS_COLOURS.inkBlue);
}

export default function GlassFields() {
  const words = useWords(glassColourWords);
  const { piece } = usePlan();
  const dispatch = useStudio((state) => state.dispatch);
  const change = (fields: Change<Piece>) => void dispatch({ type: "set-piece", change: fields });
  const layers = layersOf(piece);
  const setLayers = (next: readonly Cased[]) => change({ cased: next.length > 0 ? next : undefined });
  return (
    <section className="glass-fields">
      <p className="soft">{words.intro}</p>
      <SectionDrawing piece={piece} />
      <h3>{layers.length === 0 ? words.outermost : words.outermostOfSeveral}</h3>
      <TintFields tint={piece.tint} onChange={(tint) => change({ tint })} />
      <ul className="designs">
        {layers.map((_, at) => (
          <LayerFields
            // Layers have no name but their place.
            // biome-ignore lint/suspicious/noArrayIndexKey: as above
            key={at}
            piece={piece}
            layers={layers}
            at={at}
            onChange={setLayers}
          />
        ))}
      </ul>
      {layers.length > 0 ? <p className="soft">{words.straight}</p> : null}
      {layers.length < COUNTS.cased ? (
        <Button look="outlined" onPress={() => setLayers([...layers, nextLayer(piece, layers)])}>
          {words.addLayer}
        </Button>
      ) : null}
      <FlameFields piece={piece} change={change} />
    </section>
  );
}
