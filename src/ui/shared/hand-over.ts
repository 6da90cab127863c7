/** Handing a file over to another program of the device, where the browser can (Web Share, level 2). */

const asFile = (name: string, content: Blob): File => new File([content], name, { type: content.type });

/** Whether a file of this name and type could be handed over; asked without its content. */
export const canHandOver = (name: string, type: string): boolean =>
  typeof navigator.canShare === "function" && navigator.canShare({ files: [new File([], name, { type })] });

/** Shares a file (Web Share API). @returns false when the person thought better of it; @throws what the browser throws otherwise */
export async function handOver(name: string, content: Blob): Promise<boolean> {
  try {
    await navigator.share({ files: [asFile(name, content)], title: name });
    return true;
  } catch (error) {
    if (error instanceof DOMException && error.name === "AbortError") return false;
    throw error;
  }
}
