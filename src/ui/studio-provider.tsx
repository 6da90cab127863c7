/** Puts a studio around components, with the viewport in which they show its piece. */
import { type ReactNode, useState } from "react";
import { createViewport, type Viewport, ViewportContext } from "./piece/viewport.ts";
import { type Studio, StudioContext } from "./studio.ts";

interface StudioProviderProps {
  readonly studio: Studio;
  /** Without one the studio is shown in a viewport of its own. */
  readonly viewport?: Viewport;
  readonly children?: ReactNode;
}

export function StudioProvider({ studio, viewport, children }: StudioProviderProps) {
  const [own] = useState(() => viewport ?? createViewport(studio));
  return (
    <StudioContext value={studio}>
      <ViewportContext value={viewport ?? own}>{children}</ViewportContext>
    </StudioContext>
  );
}
