import { expect, it } from "vitest";
import type { LookState } from "../../../src/render/look-renderer.ts";
import { statusLine } from "../../../src/ui/look/status-line.ts";
import { lookWords } from "../../../src/ui/messages/look.ts";

const state: LookState = {
  phase: "tracing",
  samples: 1,
  target: 64,
  check: { pass: true, code: "software", detail: "" },
  error: null,
  firstPictureMs: 40,
  isCoarse: false,
  gathersTable: false,
  isSlow: false,
  isBehind: false,
};
const lines = (change: Partial<LookState>, language: "en" | "de" = "en") =>
  new Set(
    Array.from({ length: 63 }, (_, k) =>
      statusLine({ ...state, ...change, samples: k + 1 }, lookWords[language].status),
    ),
  );

it("tells each doubling where samples are slow, and changes its words four times on the way to clean where they are not", () => {
  const { tracing } = lookWords.en.status;
  expect([...lines({})]).toEqual([1, 16, 32, 48].map((samples) => tracing(samples, 64)));
  expect([...lines({ isSlow: true })]).toEqual(
    [1, 2, 4, 8, 16, 32, 48].map((samples) => tracing(samples, 64)),
  );
});

it.each(["en", "de"] as const)(
  "says that the table's light is being gathered as long as it is rough: %s",
  (language) => {
    const { gathering, tracing } = lookWords[language].status;
    expect(lines({ gathersTable: true }, language)).toContain(gathering(16, 64));
    expect(lines({ gathersTable: true }, language)).not.toContain(tracing(16, 64));
    expect(statusLine({ ...state, gathersTable: true, isCoarse: true }, lookWords[language].status)).toBe(
      lookWords[language].status.coarse,
    );
  },
);
