/** The trade's words, each opening what it means with a small drawing. */
import { Dialog, DialogTrigger } from "react-aria-components/Dialog";
import { Heading } from "react-aria-components/Heading";
import { Popover } from "react-aria-components/Popover";
import { Button } from "../controls/Button.tsx";
import { helpWords } from "../messages/help.ts";
import { useWords } from "../messages/words.tsx";
import { TermDrawing, type TermName } from "./TermDrawing.tsx";

function TermLink({ term }: { term: TermName }) {
  const words = useWords(helpWords);
  const { name, text } = words.terms[term];
  return (
    <DialogTrigger>
      <Button aria-label={words.what(name)}>{name}</Button>
      <Popover className="float" placement="top" offset={4}>
        <Dialog className="term-said">
          <Heading slot="title">{words.what(name)}</Heading>
          <TermDrawing term={term} />
          <p>{text}</p>
        </Dialog>
      </Popover>
    </DialogTrigger>
  );
}

export default function TermLinks({ terms }: { terms: readonly TermName[] }) {
  const words = useWords(helpWords);
  return (
    <p className="term-links">
      <span className="soft">{words.asks}</span>
      {terms.map((term) => (
        <TermLink key={term} term={term} />
      ))}
    </p>
  );
}
