/** Scrolls to what comes up below the edge of a sheet, as the progress of what was just asked for; a ref, too. */
export const intoView = (node: Element | null): void => node?.scrollIntoView({ block: "nearest" });
