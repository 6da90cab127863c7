/**
 * The pictures of one piece: the piece itself, its profile, its skin unrolled. One is large; on a wide screen and a tablet
 * the other two stand in a low strip below it, on a phone one changes between them by name or by a swipe along the names.
 */
import { type PointerEvent, type ReactNode, Suspense, useEffect, useRef, useState } from "react";
import { Button } from "../controls/Button.tsx";
import { shellWords } from "../messages/shell.ts";
import { useWords } from "../messages/words.tsx";
import { afterPaint } from "../piece/frames.ts";
import { PiecePicture } from "../piece/PiecePicture.tsx";
import { Profile } from "../plan/profile/Profile.tsx";
import { Skin } from "../plan/skin/Skin.tsx";
import { type PictureName, showLarge, useScreen } from "../shared/screen.ts";
import { Diary, LookPicture, Quietly } from "../shared/slots.tsx";
import { useStudioStore } from "../studio.ts";
import { useStudio } from "../use-studio.ts";
import { Crashed } from "./Crashed.tsx";
import { CrashGuard } from "./CrashGuard.tsx";

const PICTURES: readonly PictureName[] = ["piece", "profile", "skin"];
/** A swipe shorter than this is a press. */
const SWIPE_PX = 40;

function Picture({ name, isLarge, children }: { name: PictureName; isLarge: boolean; children: ReactNode }) {
  const studio = useStudioStore();
  const words = useWords(shellWords);
  return (
    <section className="picture" data-picture={name} data-large={isLarge || undefined}>
      <CrashGuard instead={(again) => <Crashed again={again} />}>
        <div className="picture-inside">
          <Suspense fallback={null}>{children}</Suspense>
        </div>
      </CrashGuard>
      {isLarge ? null : (
        <Button
          className="enlarge"
          aria-label={words.enlarge(words.strip[name])}
          onPress={() => showLarge(studio, name)}
        >
          {words.strip[name]}
        </Button>
      )}
    </section>
  );
}

/** Names of the pictures: pressing one shows it, swiping along them goes to the next. */
function PictureNames() {
  const studio = useStudioStore();
  const words = useWords(shellWords);
  const large = useScreen((state) => state.large);
  const from = useRef<number | null>(null);
  const swipe = (event: PointerEvent) => {
    const along = from.current === null ? 0 : event.clientX - from.current;
    from.current = null;
    if (Math.abs(along) < SWIPE_PX) return;
    const next = PICTURES.indexOf(large) + (along < 0 ? 1 : -1);
    showLarge(studio, PICTURES[Math.min(PICTURES.length - 1, Math.max(0, next))]);
  };
  return (
    <nav
      className="picture-names"
      aria-label={words.strip.group}
      onPointerDown={(event) => {
        from.current = event.clientX;
      }}
      onPointerUp={swipe}
    >
      {PICTURES.map((name) => (
        <Button
          key={name}
          className="picture-name"
          aria-current={large === name ? "true" : undefined}
          data-here={large === name || undefined}
          onPress={() => showLarge(studio, name)}
        >
          {words.strip[name]}
        </Button>
      ))}
    </nav>
  );
}

/** False until the page has been painted once: words and the piece come first, the small pictures in the next turn. */
function useIsPainted(): boolean {
  const [isPainted, setPainted] = useState(false);
  useEffect(() => {
    let isHere = true;
    void afterPaint().then(() => isHere && setPainted(true));
    return () => {
      isHere = false;
    };
  }, []);
  return isPainted;
}

export function Pictures() {
  const studio = useStudioStore();
  const words = useWords(shellWords);
  const place = useStudio((state) => state.place);
  const large = useScreen((state) => (place === "plan" ? state.large : "piece"));
  const isPainted = useIsPainted();
  return (
    <div className="pictures" data-large={large}>
      <Picture name="piece" isLarge={large === "piece"}>
        <PiecePicture />
        <Quietly>{place === "plan" ? <Diary /> : null}</Quietly>
        <Quietly>{place === "look" ? <LookPicture /> : null}</Quietly>
      </Picture>
      {place === "plan" ? (
        <>
          <Picture name="profile" isLarge={large === "profile"}>
            {isPainted ? <Profile isNamed={large !== "profile"} /> : null}
          </Picture>
          <Picture name="skin" isLarge={large === "skin"}>
            {isPainted ? <Skin /> : null}
          </Picture>
          <PictureNames />
          {large === "piece" ? null : (
            <Button className="back-to-piece" onPress={() => showLarge(studio, "piece")}>
              {words.shrink}
            </Button>
          )}
        </>
      ) : null}
    </div>
  );
}
