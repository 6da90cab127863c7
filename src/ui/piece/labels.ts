/** Numbers that stand beside marks on the piece: words on the page, carried along by the picture. */
import { dot, type Vec3 } from "../../core/geometry/vec.ts";
import { eyeFrame, type Orbit, verticalField } from "./camera.ts";

interface Label {
  readonly element: HTMLElement;
  /** In CSS pixels, once it was seen. */
  wide: number;
  readonly at: Vec3;
  /** Of labels that say the same, only the one that faces the eye most is shown. */
  readonly group: string;
}

export interface Labels {
  /** Lets an element follow a place on the piece until the returned function is called. */
  readonly follow: (element: HTMLElement, at: Vec3, group: string) => () => void;
  /** Puts all of them where their places are seen in a picture of this size. */
  readonly place: (view: Orbit, width: number, height: number) => void;
}

/** Annotations: elements of the page that are projected onto the picture. */
export function createLabels(): Labels {
  const labels = new Set<Label>();
  return {
    follow: (element, at, group) => {
      const label = { element, wide: 0, at, group };
      labels.add(label);
      return () => labels.delete(label);
    },
    place: (view, width, height) => placeLabels(labels, view, width, height),
  };
}

/** From a place to the words beside it: the margin of `.piece-label` in piece.css. */
const LABEL_ASIDE_PX = 12;

/** A place must lean this much toward the eye to be labelled. */
const FACING = 0.18;

/** Where a point of the piece falls on a picture of this size, in CSS pixels from its top left. */
function project(view: Orbit, width: number, height: number, at: Vec3): { x: number; y: number } {
  const { out, right, up } = eyeFrame(view);
  const focus = height / 2 / Math.tan((verticalField(width / height) * Math.PI) / 360);
  const away = view.distance - dot(at, out);
  return {
    x: width / 2 + (focus * (dot(at, right) + view.panX)) / away,
    y: height / 2 - (focus * (dot(at, up) + view.panY)) / away,
  };
}

/**
 * Words stand at the right of their place, and at its left where they would leave the picture there.
 * @returns how far to the right of where the style puts them, in pixels
 */
export const asideOf = (x: number, wide: number, pictureWide: number): number =>
  x + LABEL_ASIDE_PX + wide > pictureWide ? -(wide + 2 * LABEL_ASIDE_PX) : 0;

function placeLabels(labels: ReadonlySet<Label>, view: Orbit, width: number, height: number): void {
  const { out } = eyeFrame(view);
  const best = new Map<string, number>();
  for (const { at, group } of labels) best.set(group, Math.max(best.get(group) ?? FACING, dot(at, out)));
  for (const label of labels) {
    const { element, at, group } = label;
    const isSeen = dot(at, out) === best.get(group);
    element.style.visibility = isSeen ? "visible" : "hidden";
    if (!isSeen) continue;
    const { x, y } = project(view, width, height, at);
    label.wide ||= element.offsetWidth;
    const aside = asideOf(x, label.wide, width);
    element.style.transform = `translate(${(x + aside).toFixed(1)}px, ${y.toFixed(1)}px)`;
  }
}
