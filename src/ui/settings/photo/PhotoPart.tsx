/** A photograph of the maker's own uncut marble becomes its inside: where the ball is, how it was taken, and how it will look. */
import { useEffect, useMemo, useState } from "react";
import type { OutlineFault } from "../../../core/optics/find-outline.ts";
import type { Patched } from "../../../core/optics/patch-highlights.ts";
import type { Outline } from "../../../core/optics/photo.ts";
import type { Raster } from "../../../core/optics/raster.ts";
import type { PhotoWish } from "../../../core/optics/with-photo.ts";
import type { Plan } from "../../../core/plan/document.ts";
import { PlanFileError, planFromData } from "../../../core/plan/file.ts";
import { picturesOf } from "../../../core/plan/pictures.ts";
import { fileFaultInWords } from "../../../words/file-faults.ts";
import { parseNumber } from "../../../words/format.ts";
import type { PatchQuestion, PhotoQuestion } from "../../../worker/photo-worker.ts";
import { Button } from "../../controls/Button.tsx";
import { NumberField } from "../../controls/NumberField.tsx";
import { Pick } from "../../controls/Pick.tsx";
import { Toggle } from "../../controls/Toggle.tsx";
import { FileButton } from "../../look/FileButton.tsx";
import { photoWords } from "../../messages/photo.ts";
import { useLanguage, useWords } from "../../messages/words.tsx";
import { studio } from "../../studio.ts";
import { useFormat } from "../../use-format.ts";
import { usePlan, useStudio } from "../../use-studio.ts";
import { LengthField } from "../LengthField.tsx";
import { OutlineOverlay } from "./OutlineOverlay.tsx";
import { photoPool } from "./photo-pool.ts";
import { RasterCanvas } from "./RasterCanvas.tsx";
import { readPhoto } from "./read-photo.ts";
import "./photo.css";

/** How the photograph was taken, but for where the ball stands in it. */
type Taken = Omit<PhotoWish, "outline" | "diameterMm">;

const UNKNOWN_DISTANCE_RADII = 10;
/** Edits in a row are one question. */
const PAUSE_MS = 120;

/** Where to begin when no ball was found. */
const middleOf = ({ width, height }: Raster): Outline => ({
  x: width / 2,
  y: height / 2,
  r: 0.4 * Math.min(width, height),
});

/** Without pictures that nothing in the glass names any more. */
function pruned(plan: Plan): Plan {
  const named = new Set((plan.piece.inside ?? []).flatMap(picturesOf));
  const pictures = Object.entries(plan.pictures ?? {}).filter(([id]) => named.has(id));
  return { ...plan, pictures: Object.fromEntries(pictures) };
}

/** The patched photograph with a line of black and white around what was patched. */
function withMarks({ photo, mask, share }: Patched): Raster {
  if (share === 0) return photo;
  const { width, height } = photo;
  const rgba = photo.rgba.slice();
  for (let k = 0; k < mask.length; k++) {
    const isRim = mask[k] && !(mask[k - 1] && mask[k + 1] && mask[k - width] && mask[k + width]);
    if (isRim) rgba.fill(((k % width) + Math.floor(k / width)) & 4 ? 255 : 0, 4 * k, 4 * k + 3);
  }
  return { width, height, rgba };
}

/** An answer from the worker that follows its question (the same object: the same question), the last one only. */
function useAnswer<Q extends object, A>(
  question: Q | null,
  ask: (question: Q, signal: AbortSignal) => Promise<A>,
): A | null {
  const [answer, setAnswer] = useState<A | null>(null);
  const [trouble, setTrouble] = useState<unknown>(null);
  useEffect(() => {
    if (!question) return;
    const over = new AbortController();
    const timer = setTimeout(() => {
      ask(question, over.signal).then(setAnswer, (error) => {
        if (!over.signal.aborted) setTrouble(error);
      });
    }, PAUSE_MS);
    return () => {
      clearTimeout(timer);
      over.abort();
    };
  }, [question, ask]);
  if (trouble) throw trouble;
  return answer;
}

const askOutline = (photo: Raster, signal: AbortSignal) => photoPool.run("findOutline", photo, { signal });
const askPatch = (question: PatchQuestion, signal: AbortSignal) =>
  photoPool.run("patch", question, { signal });
const askPreview = (question: PhotoQuestion, signal: AbortSignal) =>
  photoPool.run("preview", question, { signal });

export default function PhotoPart() {
  const words = useWords(photoWords);
  const [photo, setPhoto] = useState<Raster | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const take = async (file: File) => {
    try {
      setPhoto(await readPhoto(file));
      setTrouble(null);
    } catch (error) {
      if (!(error instanceof DOMException)) throw error;
      setTrouble(words.unreadable(file.name));
    }
  };
  return (
    <section className="photo">
      <h3>{words.title}</h3>
      <p className="soft">{words.intro}</p>
      <FileButton
        accept="image/*"
        words={photo ? words.other : words.choose}
        onFile={(file) => void take(file)}
      />
      {trouble ? <p role="alert">{trouble}</p> : null}
      {photo ? <Taking key={`${photo.width} ${photo.height} ${photo.rgba.length}`} photo={photo} /> : null}
    </section>
  );
}

/** What was found, and what stands against it in words. */
function Found({ fault }: { fault: OutlineFault | null }) {
  const words = useWords(photoWords);
  if (!fault) return null;
  const said = { none: words.none, "cut-off": words.cutOff };
  return <p role="status">{fault.code === "too-small" ? words.tooSmall(fault.pixels) : said[fault.code]}</p>;
}

function Taking({ photo }: { photo: Raster }) {
  const words = useWords(photoWords);
  const plan = usePlan();
  const radiusMm = plan.piece.diameterMm / 2;
  const [outline, setOutline] = useState<Outline | null>(null);
  const [fault, setFault] = useState<OutlineFault | null>(null);
  const [taken, setTaken] = useState<Taken>({
    distanceMm: UNKNOWN_DISTANCE_RADII * radiusMm,
    side: "front",
    shape: "disc",
    depthMm: 0,
  });
  const [isPatched, setPatched] = useState(true);
  const found = useAnswer(photo, askOutline);
  useEffect(() => {
    if (!found) return;
    setFault("code" in found ? found : null);
    setOutline("outline" in found ? found.outline : middleOf(photo));
  }, [found, photo]);
  const toPatch = useMemo(
    () => (outline && isPatched ? { photo, outline } : null),
    [photo, outline, isPatched],
  );
  const patched = useAnswer(toPatch, askPatch);
  const marked = useMemo(
    () => (isPatched && patched ? withMarks(patched) : photo),
    [isPatched, patched, photo],
  );
  const wish = useMemo(
    (): PhotoWish | null => outline && { ...taken, outline, diameterMm: null },
    [taken, outline],
  );
  if (!outline || !wish) return <p role="status">{words.looking}</p>;
  const shown = isPatched && patched ? patched.photo : photo;
  return (
    <>
      <Found fault={fault} />
      <div className="photo-pair">
        <figure>
          <div className="photo-frame">
            <RasterCanvas raster={marked} label={words.photograph} />
            <OutlineOverlay photo={photo} outline={outline} label={words.circle} onChange={setOutline} />
          </div>
          <figcaption>{words.photograph}</figcaption>
        </figure>
        <Traced photo={shown} wish={wish} />
      </div>
      <OutlineFields photo={photo} outline={outline} onChange={setOutline} />
      <TakenFields taken={taken} onChange={setTaken} />
      <Toggle isOn={isPatched} onChange={setPatched}>
        {words.patch}
      </Toggle>
      {isPatched && patched ? <PatchedWords patched={patched} /> : null}
      <Put photo={shown} wish={wish} />
    </>
  );
}

function PatchedWords({ patched }: { patched: Patched }) {
  const words = useWords(photoWords);
  const { number } = useFormat();
  return (
    <p className="small" role="status">
      {patched.share > 0 ? words.patched(`${number(100 * patched.share, 1)} %`) : words.patchedNone}
    </p>
  );
}

/** The uncut ball with it inside, traced from where the photograph was taken. */
function Traced({ photo, wish }: { photo: Raster; wish: PhotoWish }) {
  const words = useWords(photoWords);
  const plan = usePlan();
  const { piece } = plan;
  // the tiers play no part
  const question = useMemo(
    () => ({ plan: { ...studio.getState().plan, piece, tiers: [], pictures: {} }, photo, wish }),
    [piece, photo, wish],
  );
  const traced = useAnswer(question, askPreview);
  return (
    <figure>
      {traced ? <RasterCanvas raster={traced} label={words.traced} /> : <div className="photo-wait" />}
      <figcaption>{traced ? words.traced : words.tracing}</figcaption>
    </figure>
  );
}

function OutlineFields({
  photo,
  outline,
  onChange,
}: {
  photo: Raster;
  outline: Outline;
  onChange: (outline: Outline) => void;
}) {
  const words = useWords(photoWords);
  const { number } = useFormat();
  const pixels = (label: string, key: keyof Outline, min: number, max: number) => (
    <NumberField
      label={label}
      value={outline[key]}
      min={min}
      max={max}
      step={1}
      unit="px"
      format={(value) => number(value, 0)}
      parse={parseNumber}
      onChange={(value) => onChange({ ...outline, [key]: value })}
    />
  );
  return (
    <div className="fields">
      {pixels(words.across, "x", 0, photo.width)}
      {pixels(words.down, "y", 0, photo.height)}
      {pixels(words.radius, "r", 8, Math.max(photo.width, photo.height))}
    </div>
  );
}

function TakenFields({ taken, onChange }: { taken: Taken; onChange: (taken: Taken) => void }) {
  const words = useWords(photoWords);
  const radiusMm = usePlan().piece.diameterMm / 2;
  // within the glass, and the camera outside of it
  const most = 0.98 * radiusMm;
  return (
    <>
      <div className="fields">
        <Pick
          label={words.side}
          value={taken.side}
          options={[
            { id: "front", words: words.front },
            { id: "back", words: words.back },
          ]}
          onChange={(side) => onChange({ ...taken, side })}
        />
        <Pick
          label={words.shape}
          value={taken.shape}
          options={[
            { id: "disc", words: words.disc },
            { id: "core", words: words.core },
          ]}
          onChange={(shape) => onChange({ ...taken, shape })}
        />
      </div>
      <div className="fields">
        <LengthField
          label={words.depth}
          range={{ min: -most, max: most }}
          value={taken.depthMm}
          onChange={(depthMm) => onChange({ ...taken, depthMm })}
        />
        <LengthField
          label={words.distance}
          range={{ min: 1.05 * radiusMm, max: 5000 }}
          digits={0}
          stepMm={10}
          value={taken.distanceMm}
          description={words.distanceHint}
          onChange={(distanceMm) => onChange({ ...taken, distanceMm })}
        />
      </div>
    </>
  );
}

function Put({ photo, wish }: { photo: Raster; wish: PhotoWish }) {
  const words = useWords(photoWords);
  const language = useLanguage();
  const plan = usePlan();
  const dispatch = useStudio((state) => state.dispatch);
  const [said, say] = useState<string | null>(null);
  const [isBusy, setBusy] = useState(false);
  const put = async () => {
    setBusy(true);
    try {
      const made = await photoPool.run("put", { plan: pruned(plan), photo, wish });
      planFromData(made);
      const { inside } = made.piece;
      const { ok } = dispatch({
        type: "apply-mend",
        code: "photo",
        commands: [
          { type: "set-piece", change: { inside } },
          { type: "set-field", path: ["pictures"], value: made.pictures },
        ],
      });
      say(ok ? words.isInside : null);
    } catch (error) {
      if (!(error instanceof PlanFileError)) throw error;
      say(words.full(fileFaultInWords(error.fault, language)));
    } finally {
      setBusy(false);
    }
  };
  return (
    <p className="photo-put">
      <Button look="outlined" isDisabled={isBusy} onPress={() => void put()}>
        {words.put}
      </Button>
      <span role="status">{said}</span>
    </p>
  );
}
