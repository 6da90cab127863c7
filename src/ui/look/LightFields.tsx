/** Which light falls on the piece, from where, how bright it is shown, and what stands behind. */
import { useState } from "react";
import { readHdr } from "../../core/optics/hdr.ts";
import { HdrError } from "../../core/optics/hdr-fault.ts";
import { LIGHT_NAMES } from "../../core/optics/light-settings.ts";
import { fileFaultInWords } from "../../words/file-faults.ts";
import { hdrFaultInWords } from "../../words/hdr-faults.ts";
import { LIGHT_WORDS } from "../../words/lights.ts";
import { Choice } from "../controls/Choice.tsx";
import { Pick } from "../controls/Pick.tsx";
import { lookWords } from "../messages/look.ts";
import { useLanguage, useWords } from "../messages/words.tsx";
import { useStudioStore } from "../studio.ts";
import { useFormat } from "../use-format.ts";
import { FileButton } from "./FileButton.tsx";
import { type LightChoice, setLook, useLook } from "./look-settings.ts";
import { Slide } from "./Slide.tsx";

const MOST_STOPS = 4;
/** Full stops of a lens, and none. */
const F_NUMBERS: readonly (number | null)[] = [null, 22, 16, 11, 8, 5.6, 4];

export function LightFields() {
  const studio = useStudioStore();
  const words = useWords(lookWords).light;
  const language = useLanguage();
  const format = useFormat();
  const light = useLook((settings) => settings.light);
  const turn = useLook((settings) => settings.lightTurnDeg);
  const exposure = useLook((settings) => settings.exposure);
  const fNumber = useLook((settings) => settings.fNumber);
  const picture = useLook((settings) => settings.picture);
  const behind = useLook((settings) => settings.behind);
  const options = [
    ...LIGHT_NAMES.map((id): { id: LightChoice; words: string } => ({
      id,
      words: LIGHT_WORDS[id][language],
    })),
    ...(picture ? [{ id: "picture" as const, words: picture.name }] : []),
  ];
  return (
    <section className="look-part">
      <h2>{words.title}</h2>
      <Choice
        label={words.label}
        value={light}
        options={options}
        onChange={(next) => setLook(studio, { light: next })}
      />
      <Slide
        label={words.turn}
        shown={format.degrees(turn, 0)}
        value={turn}
        min={-180}
        max={180}
        step={5}
        onChange={(lightTurnDeg) => setLook(studio, { lightTurnDeg })}
      />
      <Slide
        label={words.exposure}
        shown={`${exposure > 0 ? "+" : ""}${format.number(exposure, 1)} ${words.stops}`}
        value={exposure}
        min={-MOST_STOPS}
        max={MOST_STOPS}
        step={0.1}
        onChange={(next) => setLook(studio, { exposure: next })}
      />
      <Choice
        label={words.sharp}
        value={String(fNumber)}
        options={F_NUMBERS.map((n) => ({
          id: String(n),
          words: n === null ? words.allSharp : `f/${format.number(n, 1)}`,
        }))}
        onChange={(next) => setLook(studio, { fNumber: next === "null" ? null : Number(next) })}
      />
      <Pick
        label={words.behind}
        value={behind}
        options={[
          { id: "nothing", words: words.ground },
          { id: "soft", words: words.soft },
          { id: "light", words: words.around },
        ]}
        onChange={(next) => setLook(studio, { behind: next })}
      />
      <OwnPicture />
    </section>
  );
}

function OwnPicture() {
  const studio = useStudioStore();
  const words = useWords(lookWords).light;
  const language = useLanguage();
  const [trouble, setTrouble] = useState<string | null>(null);
  const take = async (file: File) => {
    try {
      const pixels = readHdr(new Uint8Array(await file.arrayBuffer()));
      setLook(studio, { picture: { name: file.name, pixels }, light: "picture" });
      setTrouble(null);
    } catch (error) {
      const why =
        error instanceof HdrError
          ? hdrFaultInWords(error.fault, language)
          : fileFaultInWords({ code: "file-unreadable", data: {} }, language);
      setTrouble(words.pictureBad(file.name, why));
    }
  };
  return (
    <div>
      <FileButton accept=".hdr" words={words.choosePicture} onFiles={([file]) => void take(file)} />
      {trouble ? (
        <p className="look-trouble" role="alert">
          {trouble}
        </p>
      ) : (
        <p className="look-note">{words.pictureHow}</p>
      )}
    </div>
  );
}
