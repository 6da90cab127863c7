/** The colour of the glass, edited beside the piece: a line of the column that opens and closes. */
import { Button } from "react-aria-components/Button";
import { layersOf } from "../../core/optics/casing.ts";
import type { Tint } from "../../core/plan/document.ts";
import { planWords } from "../messages/plan.ts";
import { useWords } from "../messages/words.tsx";
import { screenOf, useScreen } from "../shared/screen.ts";
import { GlassFields, Quietly } from "../shared/slots.tsx";
import { useStudioStore } from "../studio.ts";
import { usePlan } from "../use-studio.ts";

/** A tint as the style sheet takes it; clear glass lets all through. */
export const cssColour = (tint: Pick<Tint, "rgb"> | undefined): string =>
  `color(srgb-linear ${(tint?.rgb ?? [1, 1, 1]).join(" ")})`;

export function GlassPart() {
  const studio = useStudioStore();
  const words = useWords(planWords).piece;
  const { piece } = usePlan();
  const isOpen = useScreen((state) => state.editsGlass);
  const layers = layersOf(piece);
  const tints = [piece.tint, ...layers.map(({ tint }) => tint)];
  const isClear = tints.every((tint) => tint === undefined);
  return (
    <section className="glass-part" data-open={isOpen || undefined}>
      <Button
        className="piece-line"
        aria-expanded={isOpen}
        onPress={() => screenOf(studio).setState({ editsGlass: !isOpen })}
      >
        {isClear
          ? words.glassClear
          : layers.length === 0
            ? words.glassTinted
            : words.glassCased(tints.length)}
        {isClear
          ? null
          : tints.map((tint, i) => (
              // Layers have no name but their place.
              // biome-ignore lint/suspicious/noArrayIndexKey: as above
              <span key={i} className="glass-dot" style={{ background: cssColour(tint) }} />
            ))}
      </Button>
      {isOpen ? (
        <Quietly>
          <GlassFields />
        </Quietly>
      ) : null}
    </section>
  );
}
