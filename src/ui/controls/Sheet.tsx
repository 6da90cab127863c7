/** A sheet of paper laid over the bench: everything that is not one of the three places. */
import { type ReactNode, useCallback, useRef } from "react";
import { Dialog } from "react-aria-components/Dialog";
import { Heading } from "react-aria-components/Heading";
import { Modal, ModalOverlay } from "react-aria-components/Modal";
import { shellWords } from "../messages/shell.ts";
import { useWords } from "../messages/words.tsx";
import { useCover } from "../shared/trail.ts";
import { Button } from "./Button.tsx";
import "./controls.css";

/** A modal dialog. */
export function Sheet({
  title,
  onClose,
  wide = false,
  children,
}: {
  title: string;
  onClose: () => void;
  wide?: boolean;
  children: ReactNode;
}) {
  const words = useWords(shellWords);
  const close = useRef(onClose);
  close.current = onClose;
  useCover(useCallback(() => close.current(), []));
  const onOpenChange = (isOpen: boolean) => {
    if (isOpen) return;
    // what is typed counts on leaving its field, and no field hears that it is taken away
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
    onClose();
  };
  return (
    <ModalOverlay className="veil" isOpen isDismissable onOpenChange={onOpenChange}>
      <Modal className={wide ? "sheet sheet-wide" : "sheet"}>
        <Dialog className="sheet-inside">
          <header className="sheet-head">
            <Heading slot="title" className="sheet-title">
              {title}
            </Heading>
            <Button onPress={onClose}>{words.close}</Button>
          </header>
          {/* A long sheet without fields must still scroll by keyboard. */}
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: as above */}
          <section className="sheet-body" aria-label={title} tabIndex={0}>
            {children}
          </section>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
