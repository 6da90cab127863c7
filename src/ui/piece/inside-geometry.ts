/** The design inside as simple bodies: its true size and place, so that one sees how near the facets come. Unit sphere. */
import {
  BufferAttribute,
  BufferGeometry,
  type Color,
  CylinderGeometry,
  Matrix4,
  SphereGeometry,
  Color as ThreeColor,
  Vector3,
} from "three";
import { BODIES } from "../../core/inside/bodies.ts";
import type { Grid, RoundShape } from "../../core/inside/drawn.ts";
import { packDesign } from "../../core/inside/pack.ts";
import type { SceneDesign } from "../../core/inside/scene-design.ts";
import { indexAt, LINE_D_NM, opticalGlass } from "../../core/optics/glasses.ts";
import type { Piece } from "../../core/plan/document.ts";

export interface InsideBody {
  readonly key: string;
  readonly geometry: BufferGeometry;
  readonly color: Color;
}

const FINE = 40;
/** Of a picture's sheet in the drawing, in radii of the ball; light meets it without any. */
const DISC_THICKNESS = 0.01;

function gridGeometry({ nu, nv, at }: Grid): BufferGeometry {
  const positions: number[] = [];
  const index: number[] = [];
  for (let i = 0; i <= nu; i++) for (let j = 0; j <= nv; j++) positions.push(...at(i / nu, j / nv));
  for (let i = 0; i < nu; i++)
    for (let j = 0; j < nv; j++) {
      const a = i * (nv + 1) + j;
      const b = a + nv + 1;
      index.push(a, b, a + 1, b, b + 1, a + 1);
    }
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(new Float32Array(positions), 3));
  geometry.setIndex(index);
  geometry.computeVertexNormals();
  return geometry;
}

/** The part of the ball beyond a plane across the axis. */
const cap = ({ size }: SceneDesign): BufferGeometry => {
  const opening = Math.acos(Math.min(1, Math.max(-1, size[0])));
  const cap = new SphereGeometry(0.995, FINE, FINE / 2, 0, 2 * Math.PI, 0, opening);
  return cap.rotateX(Math.PI / 2);
};

/** Golden-angle points in a ball: evenly strewn without chance. */
const grains = ({ size }: SceneDesign): BufferGeometry => {
  const [grain, ball, cell] = size;
  const count = Math.min(400, Math.round((4 / 3) * Math.PI * (ball / cell) ** 3));
  const golden = Math.PI * (3 - Math.sqrt(5));
  const seed = new SphereGeometry(grain, 6, 4).toNonIndexed();
  const base = seed.getAttribute("position").array;
  const positions = new Float32Array(base.length * count);
  for (let i = 0; i < count; i++) {
    const r = ball * Math.cbrt((i + 0.5) / count);
    const z = 1 - (2 * ((i * 0.618034) % 1) + 1e-6);
    const ring = Math.sqrt(Math.max(0, 1 - z * z));
    const at = [r * ring * Math.cos(i * golden), r * ring * Math.sin(i * golden), r * z];
    for (let k = 0; k < base.length; k++) positions[i * base.length + k] = base[k] + at[k % 3];
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(positions, 3));
  geometry.computeVertexNormals();
  return geometry;
};

/** A round sheet, thick enough to be seen from its edge. */
const disc = ({ size }: SceneDesign): BufferGeometry =>
  new CylinderGeometry(size[0], size[0], DISC_THICKNESS, FINE).rotateX(Math.PI / 2);

const ellipsoid = ({ size }: SceneDesign): BufferGeometry => new SphereGeometry(1, FINE, FINE).scale(...size);

/** Several bodies as one. */
function joined(parts: readonly BufferGeometry[]): BufferGeometry {
  if (parts.length === 1) return parts[0];
  const positions: number[] = [];
  const index: number[] = [];
  for (const part of parts) {
    const first = positions.length / 3;
    for (const v of part.getAttribute("position").array) positions.push(v);
    for (const i of part.getIndex()?.array ?? []) index.push(first + i);
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(new Float32Array(positions), 3));
  geometry.setIndex(index);
  geometry.computeVertexNormals();
  return geometry;
}

const ROUND: Readonly<Record<RoundShape, (design: SceneDesign) => BufferGeometry>> = {
  ellipsoid,
  cap,
  grains,
  disc,
};

function shapeOf(design: SceneDesign): BufferGeometry {
  const { drawn } = BODIES[design.kind];
  return typeof drawn === "string" ? ROUND[drawn](design) : joined(drawn(design).map(gridGeometry));
}

function bodyOf(design: SceneDesign, key: string): InsideBody {
  const shape = shapeOf(design);
  const frame = new Matrix4().makeBasis(
    new Vector3(...design.axisX),
    new Vector3(...design.axisY),
    new Vector3(...design.axisZ),
  );
  frame.setPosition(...design.centre);
  return { key, geometry: shape.applyMatrix4(frame), color: new ThreeColor().setRGB(...design.rgb) };
}

/** Bodies in the piece's own axes, in the order of the plan. */
export function insideBodies(piece: Piece): InsideBody[] {
  const nd = indexAt(opticalGlass(piece.glass).dispersion, LINE_D_NM);
  return (piece.inside ?? []).flatMap((design, i) =>
    packDesign(piece, design, nd).map((body, k) => bodyOf(body, `${i} ${k} ${design.kind}`)),
  );
}
