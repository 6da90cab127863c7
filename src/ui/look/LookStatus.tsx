/** One quiet line on how far the picture is, or why there is none. */
import { lookWords } from "../messages/look.ts";
import { useWords } from "../messages/words.tsx";
import { useTracing } from "./traced.ts";

export function LookStatus() {
  const words = useWords(lookWords).status;
  const state = useTracing();
  if (!state) return null;
  if (state.phase === "unable") {
    return (
      <div className="look-status look-unable" role="alert">
        <p>{words.unable}</p>
        <p className="soft">{words.cause[state.check.pass ? "shader-refused" : state.check.code]}</p>
        <details>
          <summary>{words.details}</summary>
          <p>{state.error ?? state.check.detail}</p>
        </details>
      </div>
    );
  }
  const line =
    state.phase === "preparing"
      ? words.preparing
      : state.phase === "lost"
        ? words.lost
        : state.phase === "clean"
          ? words.clean
          : words.tracing(Math.round((100 * state.samples) / state.target));
  return (
    <p className="look-status" role="status">
      {line}
    </p>
  );
}
