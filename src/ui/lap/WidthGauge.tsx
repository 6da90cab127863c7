/** The width to stop at, true to size on this screen: hold the glass against it. First the screen is held against a ruler. */
import { useState } from "react";
import { Button } from "../controls/Button.tsx";
import { lapWords } from "../messages/lap.ts";
import { useWords } from "../messages/words.tsx";
import { useFormat } from "../use-format.ts";
import { CALIBRATION_MM, loadScale, NOMINAL_PX_PER_MM, SCALE_RANGE, saveScale } from "./screen-scale.ts";
import { browserShelf } from "./shelf.ts";

function Calibrating({ from, onDone }: { from: number; onDone: (pxPerMm: number | null) => void }) {
  const words = useWords(lapWords);
  const { length } = useFormat();
  const [scale, setScale] = useState(from);
  return (
    <fieldset className="lap-calibrate" aria-label={words.gauge.calibrate}>
      <p>{words.gauge.hold(length(CALIBRATION_MM, 0))}</p>
      <div
        className="lap-calibrate-bar"
        style={{ inlineSize: `${scale * CALIBRATION_MM}px` }}
        aria-hidden="true"
      />
      <input
        type="range"
        aria-label={words.gauge.slide}
        aria-valuetext={words.gauge.scaleSaid(scale.toFixed(2))}
        min={SCALE_RANGE.min}
        max={SCALE_RANGE.max}
        step={0.01}
        value={scale}
        onChange={(event) => setScale(Number(event.currentTarget.value))}
      />
      <div className="bench-row">
        <Button look="outlined" onPress={() => setScale((old) => Math.max(SCALE_RANGE.min, old - 0.01))}>
          {words.gauge.shorter}
        </Button>
        <Button look="outlined" onPress={() => setScale((old) => Math.min(SCALE_RANGE.max, old + 0.01))}>
          {words.gauge.longer}
        </Button>
        <Button look="strong" onPress={() => onDone(scale)}>
          {words.gauge.fits}
        </Button>
        <Button onPress={() => onDone(null)}>{words.gauge.cancel}</Button>
      </div>
    </fieldset>
  );
}

export function WidthGauge({ widthMm }: { widthMm: number }) {
  const words = useWords(lapWords);
  const { length } = useFormat();
  const [scale, setScale] = useState(() => loadScale(browserShelf()));
  const [isOpen, setOpen] = useState(false);
  const [isKept, setKept] = useState(true);
  if (isOpen)
    return (
      <Calibrating
        from={scale ?? NOMINAL_PX_PER_MM}
        onDone={(next) => {
          setOpen(false);
          if (next === null) return;
          setScale(next);
          setKept(saveScale(browserShelf(), next));
        }}
      />
    );
  return (
    <div className="lap-gauge">
      {scale === null ? null : (
        <div
          className="lap-gauge-slot"
          role="img"
          aria-label={words.gauge.shows(length(widthMm))}
          data-mm={widthMm}
          style={{ inlineSize: `${scale * widthMm}px` }}
        />
      )}
      <Button onPress={() => setOpen(true)}>
        {scale === null ? words.gauge.calibrate : words.gauge.again}
      </Button>
      {isKept ? null : <p className="small">{words.gauge.notKept}</p>}
    </div>
  );
}
