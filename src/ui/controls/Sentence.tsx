/** Running text with fields in it: "{count} facets at {angle}" in the order of each language. */
import { Fragment, type ReactNode } from "react";

const SLOT = /\{(\w+)\}/;

/** Splits a template into words (even places) and names of slots (odd places). */
const sentenceParts = (template: string): readonly string[] => template.split(SLOT);

/** Punctuation at the head of a piece of text: it may not be parted from what stands before it. */
const CLINGING = /^[,.;:!?]+/;

export function Sentence({
  template,
  slots,
}: {
  template: string;
  slots: Readonly<Record<string, ReactNode>>;
}) {
  const parts = sentenceParts(template);
  return parts.map((part, place) => {
    const key = `${place}-${part}`;
    // A place in a template never moves, so it may name its part.
    if (place % 2 === 0)
      return <Fragment key={key}>{place === 0 ? part : part.replace(CLINGING, "")}</Fragment>;
    const clinging = CLINGING.exec(parts[place + 1])?.[0];
    const field = slots[part] ?? null;
    return clinging ? (
      <span key={key} className="clings">
        {field}
        {clinging}
      </span>
    ) : (
      <Fragment key={key}>{field}</Fragment>
    );
  });
}
