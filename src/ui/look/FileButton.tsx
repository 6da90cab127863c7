/** A button that asks for one file. */
import { useRef } from "react";
import { Button } from "../controls/Button.tsx";

export interface FileButtonProps {
  readonly accept: string;
  readonly words: string;
  readonly onFile: (file: File) => void;
}

export function FileButton({ accept, words, onFile }: FileButtonProps) {
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
        hidden
        onChange={(event) => {
          const file = event.target.files?.[0];
          // The same file may be chosen again after it was changed.
          event.target.value = "";
          if (file) onFile(file);
        }}
      />
    </>
  );
}
