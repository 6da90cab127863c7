/** What was made, to be saved, and handed over where the device can. */
import { Button } from "../controls/Button.tsx";
import { offerFile } from "../shared/files.ts";
import { SendButton } from "../shared/SendButton.tsx";

/** @param name of the file  @param save what is pressed to save it */
export function KeepRow({ name, file, save }: { name: string; file: Blob; save: string }) {
  return (
    <p className="film-row">
      <Button look="strong" onPress={() => offerFile(name, file)}>
        {save}
      </Button>
      <SendButton name={name} file={file} />
    </p>
  );
}
