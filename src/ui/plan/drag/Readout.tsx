/** What a tier comes to while it is drawn: its words come once the piece stands, before a hand draws. */
import { type ComponentProps, lazy, Suspense } from "react";

const DragReadout = lazy(() => import("./DragReadout.tsx"));

export function Readout(props: ComponentProps<typeof DragReadout>) {
  return (
    <Suspense fallback={null}>
      <DragReadout {...props} />
    </Suspense>
  );
}
