/**
 * The uncut piece against white as straight light shows it, without bending: what comes through the chord at each distance from
 * the middle (Bouguer-Lambert), and the layers' borders. A closed form, so it is there at once.
 */
import { useId } from "react";
import { colourAlong, layersOf } from "../../../core/optics/casing.ts";
import type { Piece } from "../../../core/plan/document.ts";
import { glassColourWords } from "../../messages/glass-colour.ts";
import { useWords } from "../../messages/words.tsx";
import { cssColour } from "../GlassPart.tsx";

/** Stops of the gradient from the middle to the rim; closer where chords change fastest. */
const STOPS = Array.from({ length: 33 }, (_, i) => Math.sin((Math.PI * i) / 64));

export function SectionDrawing({ piece }: { piece: Piece }) {
  const words = useWords(glassColourWords);
  const id = useId();
  const borders = layersOf(piece).filter(({ diameterMm }) => diameterMm < piece.diameterMm);
  return (
    <figure className="glass-section">
      <svg viewBox="-1.05 -1.05 2.1 2.1" aria-hidden="true">
        <defs>
          <radialGradient id={id}>
            {STOPS.map((off) => (
              <stop
                key={off}
                offset={off}
                style={{ stopColor: cssColour({ rgb: colourAlong(piece, off) }) }}
              />
            ))}
          </radialGradient>
        </defs>
        <circle className="glass-ball" r="1" fill={`url(#${id})`} />
        {borders.map(({ diameterMm }, i) => (
          // Layers have no name but their place.
          // biome-ignore lint/suspicious/noArrayIndexKey: as above
          <circle key={i} className="glass-border" r={diameterMm / piece.diameterMm} />
        ))}
      </svg>
      <figcaption className="soft small">{words.section}</figcaption>
    </figure>
  );
}
