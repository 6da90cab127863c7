import { PerspectiveCamera, Vector3 } from "three";
import { describe, expect, it } from "vitest";
import { solid } from "../../../src/state/derived.ts";
import { EXAMPLES } from "../../../src/ui/examples.ts";
import { eyeFrame, eyePlace, FIELD_DEG, HOME, pictureOf } from "../../../src/ui/piece/camera.ts";
import { drawPiece, type ScreenPoint } from "../../../src/ui/piece/drawing.ts";

const PANNED = { ...HOME, azimuthDeg: 25, elevationDeg: 40, distance: 3.4, panX: 0.3, panY: -0.2 };
const area = (ring: readonly ScreenPoint[]): number =>
  ring.reduce((sum, [x, y], i) => {
    const [nx, ny] = ring[(i + 1) % ring.length];
    return sum + (x * ny - y * nx) / 2;
  }, 0);

describe("the piece as a drawing", () => {
  it.each([HOME, PANNED])("sees points where three's perspective camera does", (view) => {
    const camera = new PerspectiveCamera(FIELD_DEG, 1, 0.1, 40);
    const { out, up } = eyeFrame(view);
    const at = eyePlace(view);
    camera.position.set(...at);
    camera.up.set(...up);
    camera.lookAt(at[0] - out[0], at[1] - out[1], at[2] - out[2]);
    camera.updateMatrixWorld();
    for (const p of [[0.3, -0.4, 0.5] as const, [-0.7, 0.1, -0.2] as const]) {
      const seen = new Vector3(...p).project(camera);
      const [x, y] = pictureOf(view)(p);
      expect(x).toBeCloseTo(seen.x, 12);
      expect(y).toBeCloseTo(seen.y, 12);
    }
  });

  it("sees an uncut ball as the circle in which sight grazes it", () => {
    const { silhouette, facets } = drawPiece(solid({ ...EXAMPLES[0], tiers: [] }), HOME);
    const radius = 1 / Math.sqrt(HOME.distance ** 2 - 1) / Math.tan((FIELD_DEG * Math.PI) / 360);
    expect(facets).toEqual([]);
    for (const place of silhouette) expect(Math.hypot(...place)).toBeCloseTo(radius, 12);
  });

  it.each(EXAMPLES.map((plan) => [plan.name, plan] as const))(
    "turns every drawn facet of %s to the eye, inside what is seen of the piece",
    (_, plan) => {
      for (const view of [HOME, PANNED]) {
        const { silhouette, facets } = drawPiece(solid(plan), view);
        expect(facets.length).toBeGreaterThan(0);
        // counter-clockwise from outside: turned away it would run the other way round
        const areas = facets.map(({ ring }) => area(ring));
        expect(Math.min(...areas)).toBeGreaterThan(0);
        // a facet may cover all that is seen, never more
        expect(areas.reduce((a, b) => a + b)).toBeLessThan(area(silhouette) * (1 + 1e-9));
        const inward = facets.flatMap(({ ring }) =>
          ring.flatMap(([x, y]) =>
            silhouette.map(([ax, ay], i) => {
              const [bx, by] = silhouette[(i + 1) % silhouette.length];
              return (bx - ax) * (y - ay) - (by - ay) * (x - ax);
            }),
          ),
        );
        expect(inward.every((side) => side > -1e-9)).toBe(true);
      }
    },
  );

  it("is facets and nothing else where no skin is left to be seen", () => {
    const covered = EXAMPLES.find(({ name }) => name === "Both banks")!;
    for (const view of [HOME, PANNED]) {
      const { silhouette, facets } = drawPiece(solid(covered), view);
      const drawn = facets.reduce((sum, { ring }) => sum + area(ring), 0);
      expect(drawn / area(silhouette)).toBeCloseTo(1, 9);
    }
  });
});
