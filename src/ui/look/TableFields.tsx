/** Whether the piece lies on a table, what that is made of, and on what side. */
import { MATERIALS, type MaterialName } from "../../core/optics/materials.ts";
import { luminance } from "../../core/optics/spectrum.ts";
import { Choice } from "../controls/Choice.tsx";
import { lookWords } from "../messages/look.ts";
import { useWords } from "../messages/words.tsx";
import { useStudioStore } from "../studio.ts";
import { useFormat } from "../use-format.ts";
import { usePlan } from "../use-studio.ts";
import { type RestChoice, setLook, type TableChoice, useLook } from "./look-settings.ts";
import { flatOf } from "./lying.ts";

const TABLES: readonly TableChoice[] = ["none", ...(Object.keys(MATERIALS) as MaterialName[])];
const RESTS: readonly RestChoice[] = ["side", "flat", "back", "ring"];

export function TableFields() {
  const studio = useStudioStore();
  const words = useWords(lookWords).table;
  const table = useLook((settings) => settings.table);
  return (
    <section className="look-part">
      <h2>{words.title}</h2>
      <Choice
        label={words.label}
        value={table}
        options={TABLES.map((id) => ({ id, words: words.tables[id] }))}
        onChange={(next) => setLook(studio, { table: next })}
      />
      {table === "none" ? null : <Lying table={table} />}
    </section>
  );
}

function Lying({ table }: { table: MaterialName }) {
  const studio = useStudioStore();
  const words = useWords(lookWords).table;
  const format = useFormat();
  const plan = usePlan();
  const rest = useLook((settings) => settings.rest);
  const percent = format.number(100 * luminance(MATERIALS[table].rgb), 0);
  return (
    <>
      <Choice
        label={words.rest}
        value={rest}
        options={RESTS.map((id) => ({ id, words: words.rests[id] }))}
        onChange={(next) => setLook(studio, { rest: next })}
      />
      {rest === "flat" && !flatOf(plan) ? <p className="look-note">{words.noFlat}</p> : null}
      <p className="look-note">{words.how(percent)}</p>
    </>
  );
}
