/** Offers a new version when one waits; it comes only when asked for, or when all windows are closed. */
import { useState } from "react";
import { Button } from "../controls/Button.tsx";
import { storageWords } from "../messages/storage.ts";
import { useWords } from "../messages/words.tsx";
import { takeUpdate, useUpdates } from "./updates.ts";

export default function UpdateLine() {
  const words = useWords(storageWords);
  const isWaiting = useUpdates((state) => state.isWaiting);
  const [later, setLater] = useState(false);
  const shown = isWaiting && !later;
  return (
    <div className="notice" role="status" data-shown={shown || undefined}>
      {shown ? (
        <>
          <p className="notice-text">{words.updateReady}</p>
          <span className="notice-ways">
            <Button onPress={takeUpdate}>{words.updateNow}</Button>
            <Button onPress={() => setLater(true)}>{words.updateLater}</Button>
          </span>
        </>
      ) : null}
    </div>
  );
}
