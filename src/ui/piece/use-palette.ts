/** The palette of the theme that is showing; follows the system when the person does. */
import { useEffect, useState } from "react";
import { type Palette, readPalette } from "./token-colors.ts";

export function usePalette(): Palette {
  const [palette, setPalette] = useState(readPalette);
  useEffect(() => {
    const read = () => setPalette(readPalette());
    const system = window.matchMedia("(prefers-color-scheme: dark)");
    const root = new MutationObserver(read);
    root.observe(document.documentElement, { attributes: true, attributeFilter: ["data-theme"] });
    system.addEventListener("change", read);
    return () => {
      root.disconnect();
      system.removeEventListener("change", read);
    };
  }, []);
  return palette;
}
