/** Which loop, for where, how long and how fine. */
import { LOOPS, type Loop } from "../../core/show/loops.ts";
import { Pick } from "../controls/Pick.tsx";
import { filmWords } from "../messages/film.ts";
import { useWords } from "../messages/words.tsx";
import { useFormat } from "../use-format.ts";
import { type Effort, FINENESSES, LENGTHS, RATES, SHAPES, SIZES } from "./effort.ts";

export function EffortFields({
  loop,
  effort,
  width,
  height,
  onLoop,
  onChange,
}: {
  loop: Loop;
  effort: Effort;
  /** Pixels that this comes to. */
  width: number;
  height: number;
  onLoop: (loop: Loop) => void;
  onChange: (change: Partial<Effort>) => void;
}) {
  const words = useWords(filmWords);
  const { number } = useFormat();
  return (
    <>
      <Pick
        label={words.loop}
        value={loop}
        options={LOOPS.map((id) => ({ id, words: words.loops[id] }))}
        onChange={onLoop}
      />
      <Pick
        label={words.shape}
        value={effort.shape}
        options={SHAPES.map((id) => ({ id, words: words.shapes[id] }))}
        onChange={(shape) => onChange({ shape })}
      />
      <Pick
        label={words.large}
        value={effort.size}
        options={SIZES.map((id) => ({ id, words: words.sizes[id] }))}
        onChange={(size) => onChange({ size })}
      />
      <p className="soft">{words.size(number(width, 0), number(height, 0))}</p>
      <Pick
        label={words.length}
        value={effort.length}
        options={LENGTHS.map((id) => ({ id, words: words.seconds(id) }))}
        onChange={(length) => onChange({ length })}
      />
      <Pick
        label={words.rate}
        value={effort.rate}
        options={RATES.map((id) => ({ id, words: id }))}
        onChange={(rate) => onChange({ rate })}
      />
      <Pick
        label={words.fine}
        value={effort.fineness}
        options={FINENESSES.map((id) => ({ id, words: words.finenesses[id] }))}
        onChange={(fineness) => onChange({ fineness })}
      />
    </>
  );
}
