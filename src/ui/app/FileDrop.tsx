/** The whole page takes a plan file that is dragged onto it, or photographs for the inside. */
import { type DragEvent, type ReactNode, useRef, useState } from "react";
import { shellWords } from "../messages/shell.ts";
import { useWords } from "../messages/words.tsx";
import { openPlanFile } from "../shared/files.ts";
import { useStudioStore } from "../studio.ts";
import { takePhotos } from "./take-photos.ts";

const carriesFile = (event: DragEvent) => event.dataTransfer.types.includes("Files");

/** A picture that may be a photograph; a light's picture is none. */
const PHOTO = /^image\/(?!vnd\.radiance)/;

export function FileDrop({ children }: { children: ReactNode }) {
  const studio = useStudioStore();
  const words = useWords(shellWords);
  const [isOver, setOver] = useState(false);
  // Enter and leave come for every element crossed; the page is left when they are even.
  const depth = useRef(0);
  const enter = (event: DragEvent, by: 1 | -1) => {
    if (!carriesFile(event)) return;
    event.preventDefault();
    depth.current = Math.max(0, depth.current + by);
    setOver(depth.current > 0);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping a file is a shortcut; the menu and the keyboard open files too
    <div
      className="drop"
      onDragEnter={(event) => enter(event, 1)}
      onDragLeave={(event) => enter(event, -1)}
      onDragOver={(event) => carriesFile(event) && event.preventDefault()}
      onDrop={(event) => {
        if (!carriesFile(event)) return;
        event.preventDefault();
        depth.current = 0;
        setOver(false);
        const files = [...event.dataTransfer.files];
        const photos = files.filter(({ type }) => PHOTO.test(type));
        if (photos.length > 0) takePhotos(studio, photos);
        else if (files.length > 0) void openPlanFile(studio, files[0]);
      }}
    >
      {children}
      {isOver ? <p className="drop-here">{words.dropHere}</p> : null}
    </div>
  );
}
