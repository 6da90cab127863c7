/** Hands a file that was made to the device's own programs, where the browser can; elsewhere there is no such press. */
import { useState } from "react";
import { Button } from "../controls/Button.tsx";
import { sendWords } from "../messages/send.ts";
import { useWords } from "../messages/words.tsx";
import { canHandOver, handOver } from "./hand-over.ts";

export function SendButton({ name, file }: { readonly name: string; readonly file: Blob }) {
  const words = useWords(sendWords);
  const [trouble, setTrouble] = useState<string | null>(null);
  if (!canHandOver(name, file.type)) return null;
  const send = async () => {
    setTrouble(null);
    try {
      await handOver(name, file);
    } catch (error) {
      setTrouble(words.notSent(error instanceof Error ? error.message : String(error)));
    }
  };
  return (
    <>
      <Button look="outlined" onPress={() => void send()}>
        {words.send}
      </Button>
      {trouble ? <span role="alert">{trouble}</span> : null}
    </>
  );
}
