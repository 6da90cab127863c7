/** A button that asks for a file, or for several at once. */
import { useRef } from "react";
import { Button } from "../controls/Button.tsx";

interface FileButtonProps {
  readonly accept: string;
  readonly words: string;
  readonly isSeveral?: boolean;
  /** At least one. */
  readonly onFiles: (files: readonly [File, ...File[]]) => void;
}

export function FileButton({ accept, words, isSeveral = false, onFiles }: FileButtonProps) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <Button look="outlined" onPress={() => input.current?.click()}>
        {words}
      </Button>
      <input
        ref={input}
        type="file"
        accept={accept}
        multiple={isSeveral}
        hidden
        onChange={(event) => {
          const [first, ...more] = event.target.files ?? [];
          // The same file may be chosen again after it was changed.
          event.target.value = "";
          if (first) onFiles([first, ...more]);
        }}
      />
    </>
  );
}
