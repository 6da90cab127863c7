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
import { packDesign } from "../../core/inside/pack.ts";
import {
  BACKING,
  MELTED_PETALS,
  MELTED_RIBBON,
  PETALS,
  PICTURE_DISC,
  RIBBON,
  type SceneDesign,
  SPECKLE,
  SWIRL,
  TWIST,
} from "../../core/inside/scene-design.ts";
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

/** A surface over a grid of u and v in 0..1, both ends included. */
function gridGeometry(nu: number, nv: number, at: (u: number, v: number) => Vector3): BufferGeometry {
  const positions: number[] = [];
  const index: number[] = [];
  for (let i = 0; i <= nu; i++) for (let j = 0; j <= nv; j++) positions.push(...at(i / nu, j / nv).toArray());
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

/** A band twisted about its own z axis. */
const ribbon = ({ size, extra }: SceneDesign): BufferGeometry =>
  gridGeometry(64, 6, (u, v) => {
    const z = (2 * u - 1) * size[2];
    const x = (2 * v - 1) * size[0];
    return new Vector3(x * Math.cos(extra * z), x * Math.sin(extra * z), z);
  });

/** A bowl whose rim rises and falls once a petal. */
const petals = ({ size, extra }: SceneDesign): BufferGeometry =>
  gridGeometry(16, FINE * 3, (u, v) => {
    const angle = 2 * Math.PI * v;
    const reach = size[0] * (0.62 + 0.38 * Math.abs(Math.cos((extra * angle) / 2)));
    return new Vector3(u * reach * Math.cos(angle), u * reach * Math.sin(angle), size[1] * (u * u - 0.5));
  });

/** The part of the ball beyond a plane across the axis. */
const backing = ({ size }: SceneDesign): BufferGeometry => {
  const opening = Math.acos(Math.min(1, Math.max(-1, size[0])));
  const cap = new SphereGeometry(0.995, FINE, FINE / 2, 0, 2 * Math.PI, 0, opening);
  return cap.rotateX(Math.PI / 2);
};

/** Golden-angle points in a ball: evenly strewn without chance. */
const speckle = ({ size }: SceneDesign): BufferGeometry => {
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

/** The strands of a cane twist, each a rope along its helix; what irregularity does to them is left to the traced picture. */
const twist = ({ size, more }: SceneDesign): BufferGeometry => {
  const [radius, half, thick] = size;
  const [, , rate, strands, taper] = more;
  const strand = (k: number) =>
    gridGeometry(72, 8, (u, v) => {
      const z = (2 * u - 1) * half;
      const narrow = 1 - taper * (1 - u);
      const [angle, round] = [rate * z + (2 * Math.PI * k) / strands, 2 * Math.PI * v];
      const out = narrow * (radius - 0.5 * thick + 0.5 * thick * Math.cos(round));
      const lift = narrow * 0.5 * thick * Math.sin(round);
      return new Vector3(out * Math.cos(angle), out * Math.sin(angle), z + lift);
    });
  return joined(Array.from({ length: strands }, (_, k) => strand(k)));
};

const meltedRibbon = ({ size, more }: SceneDesign): BufferGeometry =>
  gridGeometry(64, 6, (u, v) => {
    const z = (2 * u - 1) * size[1];
    const x = (2 * v - 1) * size[0];
    return new Vector3(x * Math.cos(more[2] * z), x * Math.sin(more[2] * z), z);
  });

const meltedPetals = ({ size, more }: SceneDesign): BufferGeometry =>
  gridGeometry(16, FINE * 3, (u, v) => {
    const angle = 2 * Math.PI * v;
    const reach = u * size[0] * (0.5 + 0.5 * Math.abs(Math.cos((more[2] * angle) / 2)));
    const level = more[4] * ((reach / size[0]) ** 2 - 0.5);
    return new Vector3(reach * Math.cos(angle), reach * Math.sin(angle), level);
  });

/** The arms of a swirl, each a strip along its winding. */
const swirl = ({ size, more }: SceneDesign): BufferGeometry => {
  const [, , arms, wind, depth] = more;
  const arm = (k: number) =>
    gridGeometry(32, 4, (u, v) => {
      const wide = 0.3 * ((2 * Math.PI) / arms) * u * (1 - 0.7 * u) + (0.5 * size[2]) / Math.max(size[2], u);
      const angle = (2 * Math.PI * k) / arms + wind * (1 - u) + (2 * v - 1) * Math.min(wide, Math.PI / arms);
      const r = u * size[0];
      return new Vector3(r * Math.cos(angle), r * Math.sin(angle), depth * (u - 0.5));
    });
  return joined(Array.from({ length: arms }, (_, k) => arm(k)));
};

/** By the number of the body. */
const SHAPES: Readonly<Record<number, (design: SceneDesign) => BufferGeometry>> = {
  [RIBBON]: ribbon,
  [PETALS]: petals,
  [BACKING]: backing,
  [SPECKLE]: speckle,
  [PICTURE_DISC]: disc,
  [TWIST]: twist,
  [MELTED_RIBBON]: meltedRibbon,
  [MELTED_PETALS]: meltedPetals,
  [SWIRL]: swirl,
};

function bodyOf(design: SceneDesign, key: string): InsideBody {
  const shape = (SHAPES[design.kind] ?? ellipsoid)(design);
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
