/** Everything drawn of the piece. Lives in its own React root inside the canvas and reads the one store. */
import { lazy, Suspense, useMemo } from "react";
import type { Vec3 } from "../../core/geometry/vec.ts";
import { useShownReport, useShownSolid, useShownSolved } from "../plan/diary/use-shown.ts";
import { useScreen } from "../shared/screen.ts";
import { useStudio } from "../use-studio.ts";
import { Body } from "./Body.tsx";
import { CameraRig } from "./CameraRig.tsx";
import { Lines, segmentsOf } from "./Lines.tsx";
import { DopStick } from "./Matte.tsx";
import { marksOf } from "./marks.ts";
import { inkLine } from "./on-surface.ts";
import { arcPoints, outlinePoints } from "./outline-points.ts";
import { Shadow } from "./Shadow.tsx";
import type { Palette } from "./token-colors.ts";
import { usePalette } from "./use-palette.ts";

const Inside = lazy(() => import("./Inside.tsx"));

/** With something inside, the glass lets it be seen. */
const SEE_THROUGH = 0.72;

/** Positions of picked facets: one facet, or all of a tier. */
function usePicked(kind: "selection" | "hover"): readonly number[] {
  const pick = useStudio((state) => state[kind]);
  const { facets, plan } = useShownSolved();
  return useMemo(() => {
    if (pick.tierId === null) return [];
    return facets.flatMap((facet, i) => {
      const isPicked =
        pick.facetId === null ? plan.tiers[facet.tierIndex].id === pick.tierId : facet.id === pick.facetId;
      return isPicked ? [i] : [];
    });
  }, [pick, facets, plan]);
}

function useClosedOutlines(indices: readonly number[]): readonly number[] {
  const { facets } = useShownSolid();
  return useMemo(
    () =>
      segmentsOf(
        indices
          .map((i) => outlinePoints(facets[i]))
          .filter((ring) => ring.length > 1)
          .map((ring) => [...ring, ring[0]]),
        1.002,
      ),
    [facets, indices],
  );
}

/** Selected: a double outline. Hovered: one. */
function PickOutlines({ palette }: { palette: Palette }) {
  const selected = useClosedOutlines(usePicked("selection"));
  const hovered = useClosedOutlines(usePicked("hover"));
  return (
    <>
      <Lines segments={hovered} color={palette.outline} width={3} order={6} />
      <Lines segments={selected} color={palette.outline} width={6} order={7} />
      <Lines segments={selected} color={palette["ground-lit"]} width={2.2} order={8} />
    </>
  );
}

function Outlines({ palette }: { palette: Palette }) {
  const { facets } = useShownSolid();
  const arcs = useMemo(
    () =>
      segmentsOf(
        facets.flatMap((facet) =>
          facet.outline
            .filter((piece) => piece.kind === "arc")
            .map((piece) => arcPoints(facet.plane, piece.from, piece.to)),
        ),
      ),
    [facets],
  );
  return <Lines segments={arcs} color={palette.outline} width={1.2} opacity={0.75} />;
}

/** A dot is a line too short to see, with round ends. */
const dotAt = ([x, y, z]: Vec3): Vec3[] => [
  [x, y, z],
  [x + 1e-4, y, z],
];

function MeetingMarks({ palette }: { palette: Palette }) {
  const solved = useShownSolved();
  const solid = useShownSolid();
  const report = useShownReport();
  const marks = useMemo(() => marksOf(solved, solid, report), [solved, solid, report]);
  const segments = useMemo(
    () => ({
      edges: segmentsOf(marks.edges),
      circles: segmentsOf(marks.circles, 1.003),
      hatches: segmentsOf(marks.hatches),
      dots: segmentsOf(marks.dots.map(dotAt), 1.003),
      tails: segmentsOf(marks.tails, 1.004),
    }),
    [marks],
  );
  return (
    <>
      <Lines segments={segments.hatches} color={palette["ink-soft"]} width={1.4} />
      <Lines segments={segments.edges} color={palette.outline} width={1.7} opacity={0.9} />
      <Lines segments={segments.circles} color={palette.outline} width={1.8} order={5} />
      <Lines segments={segments.dots} color={palette.outline} width={4.5} order={5} />
      <Lines segments={segments.tails} color={palette["stop-ink"]} width={2.6} order={5} />
    </>
  );
}

function InkMark({ palette }: { palette: Palette }) {
  const { planes, plan } = useShownSolved();
  const mark = plan.piece.inkMarkDeg ?? 0;
  const segments = useMemo(() => segmentsOf([inkLine(planes, mark)], 1.004), [planes, mark]);
  return <Lines segments={segments} color={palette["ink-mark"]} width={4} opacity={0.85} order={5} />;
}

export function Scene() {
  const palette = usePalette();
  const { planes, plan } = useShownSolved();
  const solid = useShownSolid();
  const { piece } = plan;
  const showInside = useScreen((state) => state.showInside) && (piece.inside?.length ?? 0) > 0;
  const showDop = useScreen((state) => state.showDop);
  const hovered = usePicked("hover");
  const selected = usePicked("selection");
  return (
    <>
      <CameraRig />
      <Shadow palette={palette} />
      {showInside ? (
        <Suspense fallback={null}>
          <Inside piece={piece} />
        </Suspense>
      ) : null}
      {showDop ? <DopStick piece={piece} color={palette.line} /> : null}
      <Body
        planes={planes}
        solid={solid}
        piece={piece}
        palette={palette}
        hovered={hovered.length === 1 ? hovered[0] : null}
        selected={selected.length === 1 ? selected[0] : null}
        alpha={showInside ? SEE_THROUGH : 1}
      />
      <Outlines palette={palette} />
      <MeetingMarks palette={palette} />
      <InkMark palette={palette} />
      <PickOutlines palette={palette} />
    </>
  );
}
