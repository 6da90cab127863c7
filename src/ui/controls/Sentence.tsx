/** Running text with fields in it: "{count} facets at {angle}" in the order of each language. */
import { Fragment, type ReactNode } from "react";

const SLOT = /\{(\w+)\}/;

/** Splits a template into words (even places) and names of slots (odd places). */
export const sentenceParts = (template: string): readonly string[] => template.split(SLOT);

export function Sentence({
  template,
  slots,
}: {
  template: string;
  slots: Readonly<Record<string, ReactNode>>;
}) {
  return sentenceParts(template).map((part, place) => {
    const key = `${place}-${part}`;
    // A place in a template never moves, so it may name its part.
    return place % 2 === 0 ? (
      <Fragment key={key}>{part}</Fragment>
    ) : (
      <Fragment key={key}>{slots[part] ?? null}</Fragment>
    );
  });
}
