/** Photographs of the maker's own uncut marble, from the front, the back or both, become its inside. */
import { useCallback, useEffect, useState } from "react";
import type { Plan } from "../../../core/plan/document.ts";
import { PlanFileError, planFromData } from "../../../core/plan/file.ts";
import { picturesOf } from "../../../core/plan/pictures.ts";
import { fileFaultInWords } from "../../../words/file-faults.ts";
import { Button } from "../../controls/Button.tsx";
import { Pick } from "../../controls/Pick.tsx";
import { FileButton } from "../../look/FileButton.tsx";
import { photoWords } from "../../messages/photo.ts";
import { useLanguage, useWords } from "../../messages/words.tsx";
import { screenOf, useScreen } from "../../shared/screen.ts";
import { useStudioStore } from "../../studio.ts";
import { usePlan, useStudio } from "../../use-studio.ts";
import { useSession } from "../../visit.ts";
import { LengthField } from "../LengthField.tsx";
import { photoPool } from "./photo-pool.ts";
import { type ReadPhoto, readPhoto } from "./read-photo.ts";
import { type PictureSpot, type Ready, Taking } from "./Taking.tsx";
import "./photo.css";

/** One from the front, one from the back. */
const MOST_PHOTOS = 2;
const FIRST_PLACE: PictureSpot = { shape: "disc", depthMm: 0 };
/** The middle stays within the glass, as a share of its radius. */
const DEEPEST_SHARE = 0.98;

interface Chosen {
  readonly id: number;
  readonly read: ReadPhoto;
}

/** Without pictures that nothing in the glass names any more. */
function pruned(plan: Plan): Plan {
  const named = new Set((plan.piece.inside ?? []).flatMap(picturesOf));
  const pictures = Object.entries(plan.pictures ?? {}).filter(([id]) => named.has(id));
  return { ...plan, pictures: Object.fromEntries(pictures) };
}

/** Reads the files one after the other; what can't be read is told by name. */
async function readAll(files: readonly File[]) {
  const read: ReadPhoto[] = [];
  const unreadable: string[] = [];
  for (const file of files) {
    try {
      read.push(await readPhoto(file));
    } catch (error) {
      if (!(error instanceof DOMException)) throw error;
      unreadable.push(file.name);
    }
  }
  return { read, unreadable };
}

let lastId = 0;

export default function PhotoPart() {
  const studio = useStudioStore();
  const words = useWords(photoWords);
  const [photos, setPhotos] = useState<readonly Chosen[]>([]);
  const [troubles, setTroubles] = useState<readonly string[]>([]);
  const [ready, setReady] = useState<ReadonlyMap<number, Ready>>(new Map());
  const [place, setPlace] = useState(FIRST_PLACE);
  /** Those that were put inside as they are now. */
  const [inside, setInside] = useState<ReadonlySet<Ready | undefined>>(new Set());
  const dropped = useScreen((state) => state.photos);

  const take = useCallback(
    async (files: readonly File[]) => {
      const { read, unreadable } = await readAll(files);
      const said = unreadable.map(words.unreadable);
      setPhotos((old) => {
        const added = read.slice(0, MOST_PHOTOS - old.length).map((one) => ({ id: ++lastId, read: one }));
        return [...old, ...added];
      });
      setTroubles(read.length + photos.length > MOST_PHOTOS ? [...said, words.tooMany] : said);
    },
    [words, photos.length],
  );
  useEffect(() => {
    if (dropped.length === 0) return;
    screenOf(studio).setState({ photos: [] });
    void take(dropped);
  }, [dropped, take, studio]);
  const all = photos.flatMap(({ id }) => ready.get(id) ?? []);
  const isMaking = photos.some(({ id }) => !inside.has(ready.get(id)));
  useEffect(() => {
    screenOf(studio).setState({ isMaking });
    return () => screenOf(studio).setState({ isMaking: false });
  }, [isMaking, studio]);
  const remove = (id: number) => {
    setPhotos((old) => old.filter((one) => one.id !== id));
    setReady((old) => new Map([...old].filter(([key]) => key !== id)));
  };
  const noteReady = useCallback((id: number, one: Ready) => {
    setReady((old) => new Map(old).set(id, one));
  }, []);
  return (
    <section className="photo">
      <h3>{words.title}</h3>
      <p className="soft">{words.intro}</p>
      {photos.length < MOST_PHOTOS ? (
        <FileButton
          accept="image/*"
          isSeveral
          words={photos.length === 0 ? words.choose : words.another}
          onFiles={(files) => void take(files)}
        />
      ) : null}
      {troubles.map((said) => (
        <p key={said} role="alert">
          {said}
        </p>
      ))}
      <ul className="designs">
        {photos.map(({ id, read }, i) => (
          <ReadyNoted
            key={id}
            id={id}
            read={read}
            isFirst={i === 0}
            place={place}
            onRemove={remove}
            onReady={noteReady}
          />
        ))}
      </ul>
      {photos.length > 0 ? <PlaceFields place={place} onChange={setPlace} /> : null}
      {photos.length > 0 && all.length === photos.length ? (
        <Put ready={all} onPut={() => setInside(new Set(all))} />
      ) : null}
    </section>
  );
}

/** A photograph that says by its own id when it is ready, with a function that stays the same. */
function ReadyNoted({
  id,
  read,
  isFirst,
  place,
  onRemove,
  onReady,
}: {
  id: number;
  read: ReadPhoto;
  isFirst: boolean;
  place: PictureSpot;
  onRemove: (id: number) => void;
  onReady: (id: number, ready: Ready) => void;
}) {
  const note = useCallback((ready: Ready) => onReady(id, ready), [id, onReady]);
  return (
    <Taking
      read={read}
      firstSide={isFirst ? "front" : "back"}
      place={place}
      onRemove={() => onRemove(id)}
      onReady={note}
    />
  );
}

/** Where in the glass it lies, both sides alike. */
function PlaceFields({ place, onChange }: { place: PictureSpot; onChange: (place: PictureSpot) => void }) {
  const words = useWords(photoWords);
  const most = (DEEPEST_SHARE * usePlan().piece.diameterMm) / 2;
  return (
    <div className="fields">
      <Pick
        label={words.shape}
        value={place.shape}
        options={[
          { id: "disc", words: words.disc },
          { id: "core", words: words.core },
        ]}
        onChange={(shape) => onChange({ ...place, shape })}
      />
      <LengthField
        label={words.depth}
        range={{ min: -most, max: most }}
        value={place.depthMm}
        onChange={(depthMm) => onChange({ ...place, depthMm })}
      />
    </div>
  );
}

function Put({ ready, onPut }: { ready: readonly Ready[]; onPut: () => void }) {
  const words = useWords(photoWords);
  const language = useLanguage();
  const plan = usePlan();
  const dispatch = useStudio((state) => state.dispatch);
  const [said, say] = useState<string | null>(null);
  const [isBusy, setBusy] = useState(false);
  const session = useSession();
  // The back's picture joins the front's, so that comes first.
  const inOrder = [...ready].sort((a, b) => Number(a.wish.side === "back") - Number(b.wish.side === "back"));
  const isSettled = ready.every((one) => one.isSettled);
  const sides = new Set(ready.map(({ wish }) => wish.side));
  const put = async () => {
    setBusy(true);
    try {
      let made = pruned(plan);
      for (const { photo, wish } of inOrder) made = await photoPool.run("put", { plan: made, photo, wish });
      planFromData(made);
      await session?.keepAhead(made);
      const { inside } = made.piece;
      const { ok } = dispatch({
        type: "apply-mend",
        code: "photo",
        commands: [
          { type: "set-piece", change: { inside } },
          { type: "set-field", path: ["pictures"], value: made.pictures },
        ],
      });
      if (ok) onPut();
      say(ok ? words.isInside : null);
    } catch (error) {
      if (!(error instanceof PlanFileError)) throw error;
      say(words.full(fileFaultInWords(error.fault, language)));
    } finally {
      setBusy(false);
    }
  };
  if (sides.size < ready.length) return <p role="alert">{words.sameSide}</p>;
  return (
    <p className="photo-put">
      <Button look="strong" isDisabled={isBusy || !isSettled} onPress={() => void put()}>
        {ready.length > 1 ? words.putBoth : words.put}
      </Button>
      <span role="status">{said}</span>
    </p>
  );
}
