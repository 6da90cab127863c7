/** One photograph of the uncut ball: where the ball stands in it, how it was taken, and the ball traced with it inside. */
import { useEffect, useMemo, useState } from "react";
import type { OutlineFault } from "../../../core/optics/find-outline.ts";
import { distanceByLens } from "../../../core/optics/focal-length.ts";
import type { Patched } from "../../../core/optics/patch-highlights.ts";
import type { Outline } from "../../../core/optics/photo.ts";
import type { Raster } from "../../../core/optics/raster.ts";
import type { PhotoWish } from "../../../core/optics/with-photo.ts";
import type { Side } from "../../../core/plan/document.ts";
import { parseNumber } from "../../../words/format.ts";
import type { PatchQuestion, PhotoQuestion } from "../../../worker/photo-worker.ts";
import { Button } from "../../controls/Button.tsx";
import { NumberField } from "../../controls/NumberField.tsx";
import { Pick } from "../../controls/Pick.tsx";
import { Toggle } from "../../controls/Toggle.tsx";
import { photoWords } from "../../messages/photo.ts";
import { useWords } from "../../messages/words.tsx";
import { useStudioStore } from "../../studio.ts";
import { useFormat } from "../../use-format.ts";
import { usePlan } from "../../use-studio.ts";
import { LengthField } from "../LengthField.tsx";
import { OutlineOverlay } from "./OutlineOverlay.tsx";
import { photoPool } from "./photo-pool.ts";
import { RasterCanvas } from "./RasterCanvas.tsx";
import type { ReadPhoto } from "./read-photo.ts";
import { useAnswer } from "./use-answer.ts";

/** What lies where: the same for a photograph from the front and one from the back. */
export interface PictureSpot {
  readonly shape: PhotoWish["shape"];
  readonly depthMm: number;
}
/** What is ready to be put inside. */
export interface Ready {
  readonly photo: Raster;
  readonly wish: PhotoWish;
  /** False while the lamp's mirror is still being taken out: then `photo` is not the last word. */
  readonly isSettled: boolean;
}

const UNKNOWN_DISTANCE_RADII = 10;
/** The camera stays outside of the ball, and on the bench. */
const NEAREST_RADII = 1.05;
const FARTHEST_MM = 5000;

/** Where to begin when no ball was found. */
const middleOf = ({ width, height }: Raster): Outline => ({
  x: width / 2,
  y: height / 2,
  r: 0.4 * Math.min(width, height),
});

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

const askOutline = (photo: Raster, signal: AbortSignal) => photoPool.run("findOutline", photo, { signal });
const askPatch = async (of: PatchQuestion, signal: AbortSignal) => ({
  of,
  patched: await photoPool.run("patch", of, { signal }),
});
const askPreview = (question: PhotoQuestion, signal: AbortSignal) =>
  photoPool.run("preview", question, { signal });

/** What was found, and what stands against it in words. */
function Found({ fault }: { fault: OutlineFault | null }) {
  const words = useWords(photoWords);
  if (!fault) return null;
  const said = { none: words.none, "cut-off": words.cutOff };
  return <p role="status">{fault.code === "too-small" ? words.tooSmall(fault.pixels) : said[fault.code]}</p>;
}

/** The camera's distance that nobody typed: by the lens where the file says it, else a usual one. */
function guessedMm({ raster, focalMm }: ReadPhoto, outline: Outline, radiusMm: number): number {
  if (focalMm === null) return UNKNOWN_DISTANCE_RADII * radiusMm;
  const radii = distanceByLens(focalMm, outline.r, Math.hypot(raster.width, raster.height));
  return Math.min(FARTHEST_MM, Math.max(NEAREST_RADII, radii) * radiusMm);
}

/** What is known and chosen of a photograph: the ball's outline in it, from where it was taken, and the patch over what mirrors. */
function useTaking(read: ReadPhoto, firstSide: Side, place: PictureSpot, onReady: (ready: Ready) => void) {
  const { raster: photo } = read;
  const radiusMm = usePlan().piece.diameterMm / 2;
  const [outline, setOutline] = useState<Outline | null>(null);
  const [fault, setFault] = useState<OutlineFault | null>(null);
  const [side, setSide] = useState(firstSide);
  const [typedMm, setTypedMm] = useState<number | null>(null);
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
  const patch = useAnswer(toPatch, askPatch);
  const patched = patch?.patched;
  const isSettled = toPatch === null || patch?.of === toPatch;
  const marked = useMemo(
    () => (isPatched && patched ? withMarks(patched) : photo),
    [isPatched, patched, photo],
  );
  const shown = isPatched && patched ? patched.photo : photo;
  const wish = useMemo(
    (): PhotoWish | null =>
      outline && {
        ...place,
        side,
        distanceMm: typedMm ?? guessedMm(read, outline, radiusMm),
        outline,
        diameterMm: null,
      },
    [place, side, typedMm, read, outline, radiusMm],
  );
  useEffect(() => {
    if (wish) onReady({ photo: shown, wish, isSettled });
  }, [shown, wish, isSettled, onReady]);
  return {
    photo,
    radiusMm,
    outline,
    setOutline,
    fault,
    side,
    setSide,
    wish,
    setTypedMm,
    isPatched,
    setPatched,
    patched,
    marked,
    shown,
  };
}

export function Taking({
  read,
  firstSide,
  place,
  onRemove,
  onReady,
}: {
  read: ReadPhoto;
  firstSide: Side;
  place: PictureSpot;
  onRemove: () => void;
  /** Called anew whenever something of it changes. */
  onReady: (ready: Ready) => void;
}) {
  const words = useWords(photoWords);
  const taking = useTaking(read, firstSide, place, onReady);
  const { photo, radiusMm, outline, setOutline, fault, side, setSide, wish, setTypedMm } = taking;
  const { isPatched, setPatched, patched, marked, shown } = taking;
  if (!outline || !wish) return <p role="status">{words.looking}</p>;
  return (
    <li className="design">
      <div className="row">
        <h4>{side === "front" ? words.fromFront : words.fromBack}</h4>
        <Button onPress={onRemove}>{words.remove}</Button>
      </div>
      <Found fault={fault} />
      <div className="photo-pair">
        <figure>
          <div className="photo-frame">
            <RasterCanvas raster={marked} label={words.photograph} />
            <OutlineOverlay photo={photo} outline={outline} label={words.circle} onChange={setOutline} />
          </div>
          <figcaption>{words.threePoints}</figcaption>
        </figure>
        <Traced photo={shown} wish={wish} />
      </div>
      <OutlineFields photo={photo} outline={outline} onChange={setOutline} />
      <div className="fields">
        <Pick
          label={words.side}
          value={side}
          options={[
            { id: "front", words: words.front },
            { id: "back", words: words.back },
          ]}
          onChange={setSide}
        />
        <LengthField
          label={words.distance}
          range={{ min: NEAREST_RADII * radiusMm, max: FARTHEST_MM }}
          digits={0}
          stepMm={10}
          value={wish.distanceMm}
          description={
            read.focalMm === null ? words.distanceHint : words.distanceByLens(String(read.focalMm))
          }
          onChange={setTypedMm}
        />
      </div>
      <Toggle isOn={isPatched} onChange={setPatched}>
        {words.patch}
      </Toggle>
      {isPatched && patched ? <PatchedWords patched={patched} /> : null}
    </li>
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
  const studio = useStudioStore();
  const plan = usePlan();
  const { piece } = plan;
  // the tiers play no part
  const question = useMemo(
    () => ({ plan: { ...studio.getState().plan, piece, tiers: [], pictures: {} }, photo, wish }),
    [studio, piece, photo, wish],
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
