/** Rig settings against examples worked by hand, step by step. R = 15 mm, depth 0.5 mm, so h = 14.5 mm. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  bestArmLength,
  dipForRise,
  heightPerDegree,
  hingeReach,
  hingeRise,
  rigSetting,
  settingAtLength,
  surfaceSpeed,
} from "../../../src/core/bench/rig/rig.ts";
import { discHeights } from "../../../src/core/bench/rig/rig-discs.ts";
import {
  beforeTurning,
  extensionNeeded,
  otherLength,
  rigFindings,
} from "../../../src/core/bench/rig/rig-findings.ts";
import {
  clearances,
  drawGuide,
  drawRig,
  lowestOverLap,
  rulerPoints,
  seatOnBall,
} from "../../../src/core/bench/rig/rig-pose.ts";
import type { Arm } from "../../../src/core/plan/document.ts";
import { plainSay, reachText } from "../../../src/words/answers.ts";
import { plan } from "../plan/sample.ts";
import { RIG } from "./plans.ts";

const { arm, lap } = RIG;
const pose = { armAngleDeg: 20, planeMm: 14.5, radiusMm: 15 };
const COS20 = 0.9396926208;
const SIN20 = 0.3420201433;

describe("rig setting", () => {
  it("follows the worked example at 20 degrees", () => {
    const setting = rigSetting(arm, lap, pose);
    // Middle of the band is 60, so the arm must reach 260 - 60 = 200 level: L = 200 / cos 20 = 212.8355.
    expect(setting.armLengthMm).toBeCloseTo(200 / COS20, 6);
    // Pivot height = 14.5 + 200 tan 20 = 14.5 + 72.7940.
    expect(setting.pivotHeightMm).toBeCloseTo(87.294, 3);
    expect(setting.contactRadiusMm).toBeCloseTo(60, 9);
    // sin(dip) = (87.2940 - 15) / 212.8355 = 0.339671, dip = 19.857 degrees.
    expect(setting.dipAtTouchDeg).toBeCloseTo(19.857, 3);
    // 2 pi 0.060 m x 300 / 60 s = 1.88496 m/s.
    expect(setting.speedMs).toBeCloseTo(1.88496, 5);
    expect(setting.reachable).toBe(true);
    expect(setting.reasons).toEqual([]);
  });

  it("adds a hinge 10 mm above the dop's axis as the worked example does", () => {
    const offset: Arm = { ...arm, hingeOffsetMm: 10 };
    const setting = rigSetting(offset, lap, pose);
    // L cos 20 - 10 sin 20 = 200, so L = (200 + 3.420201) / cos 20 = 216.4752.
    expect(setting.armLengthMm).toBeCloseTo((200 + 10 * SIN20) / COS20, 6);
    // 14.5 + 216.4752 x 0.3420201 + 10 x 0.9396926 = 14.5 + 74.0389 + 9.3969.
    expect(setting.pivotHeightMm).toBeCloseTo(97.9358, 3);
  });

  it("takes the shorter of two arm lengths that are equally good", () => {
    const long: Arm = { ...arm, lengthMm: [190, 330] };
    // At 0 degrees both 200 and 320 put the facet 60 mm from the axis.
    expect(bestArmLength(long, lap, 0)).toBeCloseTo(200, 9);
    expect(bestArmLength({ ...long, lengthMm: [250, 330] }, lap, 0)).toBeCloseTo(320, 9);
  });

  it("stays at the end of the arm's range when the middle of the band is out of reach", () => {
    expect(bestArmLength({ ...arm, lengthMm: [100, 150] }, lap, 0)).toBe(150);
    expect(bestArmLength({ ...arm, lengthMm: [230, 260] }, lap, 0)).toBe(230);
  });

  it("takes the shortest arm for a flat at the pole, where length doesn't move the facet", () => {
    const setting = rigSetting(arm, lap, { ...pose, armAngleDeg: 90 });
    expect(setting.armLengthMm).toBe(150);
    expect(setting.contactRadiusMm).toBe(260);
    expect(setting.pivotHeightMm).toBeCloseTo(164.5, 9);
    expect(setting.reachable).toBe(false);
    expect(setting.reasons.map((r) => r.code)).toEqual(["radius-outside-band"]);
  });

  it("finds no arm length nearer the band's middle by trying many", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 90, noNaN: true }),
        fc.double({ min: 50, max: 300, noNaN: true }),
        fc.double({ min: 0, max: 200, noNaN: true }),
        fc.double({ min: -30, max: 30, noNaN: true }),
        fc.double({ min: 0, max: 400, noNaN: true }),
        (dip, shortest, more, hingeOffsetMm, pivotToAxisMm) => {
          const any: Arm = { ...arm, lengthMm: [shortest, shortest + more], hingeOffsetMm, pivotToAxisMm };
          const miss = (length: number) =>
            Math.abs(settingAtLength(any, lap, { ...pose, armAngleDeg: dip }, length).contactRadiusMm - 60);
          const best = miss(bestArmLength(any, lap, dip));
          for (let i = 0; i <= 50; i++)
            expect(miss(shortest + (more * i) / 50)).toBeGreaterThanOrEqual(best - 1e-6);
        },
      ),
      { seed: 5, numRuns: 200 },
    );
  });

  it("names both reasons when band and pivot are out of reach", () => {
    const low: Arm = { ...arm, lengthMm: [150, 160], pivotHeightMm: [0, 40] };
    const { reachable, reasons } = rigSetting(low, lap, pose);
    expect(reachable).toBe(false);
    expect(reasons.map((r) => r.code)).toEqual(["radius-outside-band", "pivot-too-high"]);
    const say = plainSay(plan([]), "en");
    expect(reasons.map((reason) => reachText(reason, say))[1]).toMatch(/stand at .* highest place is 40\.0/);
  });

  it("solves the dip for a given rise, with and without hinge offset", () => {
    for (const offset of [0, 10, -25])
      for (const dip of [-30, 0, 12.5, 70])
        expect(dipForRise(hingeRise(200, dip, offset), 200, offset)).toBeCloseTo(dip, 9);
    expect(dipForRise(201, 200)).toBeNull();
  });

  it("gives no dip at touch when the arm is too short to stand so", () => {
    expect(
      settingAtLength(arm, lap, { armAngleDeg: 0, planeMm: -300, radiusMm: 15 }, 150).dipAtTouchDeg,
    ).toBeNull();
  });

  it("says how many mm of pivot height a degree is worth, as a small step does", () => {
    const step = (hingeRise(212, 20.005, 8) - hingeRise(212, 19.995, 8)) / 0.01;
    expect(heightPerDegree(212, 20, 8)).toBeCloseTo(step, 6);
    // 200 mm level reach x pi / 180 = 3.4907 mm a degree.
    expect(heightPerDegree(200, 0)).toBeCloseTo(3.4907, 4);
    expect(hingeReach(200, 60)).toBeCloseTo(100, 9);
    expect(surfaceSpeed(0, 300)).toBe(0);
  });
});

describe("discs of different thickness", () => {
  const setting = rigSetting(arm, lap, pose);
  const stages = [
    { id: "a", name: "a", grainUm: 75, discMm: 1 },
    { id: "b", name: "b", grainUm: 30, discMm: 3 },
    { id: "c", name: "c", grainUm: 10, discMm: 3 },
  ];
  const [a, b, c] = discHeights(arm, stages, setting, pose, 7);

  it("lifts the hinge by as much as the disc is thicker", () => {
    expect(a.hingeAbovePlateMm).toBeCloseTo(setting.pivotHeightMm + 1, 9);
    expect(b.moveHingeMm).toBe(2);
    expect(c.moveHingeMm).toBe(0);
  });

  it("says how far an uncorrected facet turns, as worked by hand", () => {
    // sin(a') = (87.2940 - 2 - 14.5) / 212.8355 = 0.332623, a' = 19.4283: 0.5717 less. Wedge 7 sin 0.5717 = 0.0698 mm.
    expect(b.uncorrectedDeg).toBeCloseTo(-0.5717, 3);
    expect(b.wedgeMm).toBeCloseTo(0.0698, 3);
    expect(c.uncorrectedDeg).toBe(0);
    expect(c.wedgeMm).toBeCloseTo(0, 9);
  });
});

describe("what touches what", () => {
  const setting = rigSetting(arm, lap, pose);
  const dop = { diameterMm: 12, lengthMm: 20, chuckDiameterMm: 30 };
  const holder = { dop, seatMm: seatOnBall(15, 12) };
  const facet = [-3, 3] as const;
  const finished = { caliperMm: 29.5, widthMm: 8 };

  it("draws hinge, centre and contact where the setting says", () => {
    const drawing = drawRig(arm, lap, pose, setting, holder, facet);
    expect(drawing.hinge).toEqual([260, setting.pivotHeightMm]);
    expect(drawing.contact[0]).toBeCloseTo(60, 9);
    expect(drawing.centre[1]).toBe(14.5);
    // Without offset the dop's axis ends in the hinge.
    expect(drawing.armEnd[0]).toBeCloseTo(260, 9);
    expect(drawing.armEnd[1]).toBeCloseTo(setting.pivotHeightMm, 9);
    expect(drawing.atTouch?.centre[1]).toBe(15);
    expect(drawing.atTouch?.armEnd[1]).toBeCloseTo(setting.pivotHeightMm, 9);
  });

  it("keeps the hinge in its place with an offset", () => {
    const offset: Arm = { ...arm, hingeOffsetMm: 10 };
    const own = rigSetting(offset, lap, pose);
    const drawing = drawRig(offset, lap, pose, own, null, facet);
    expect(Math.hypot(drawing.armEnd[0] - 260, drawing.armEnd[1] - own.pivotHeightMm)).toBeCloseTo(10, 9);
  });

  it("finds the lowest place of a segment over the lap only", () => {
    expect(
      lowestOverLap(100, [
        [50, 5],
        [150, -15],
      ]),
    ).toBeCloseTo(-5, 9);
    expect(
      lowestOverLap(100, [
        [120, -3],
        [150, -15],
      ]),
    ).toBeNull();
    expect(
      lowestOverLap(100, [
        [-150, 4],
        [150, 4],
      ]),
    ).toBe(4);
  });

  it("lets a facet on the equator of a small marble bring a thick chuck into the lap", () => {
    const flat = { armAngleDeg: 0, planeMm: 14.5, radiusMm: 15 };
    const own = rigSetting(arm, lap, flat);
    const drawing = drawRig(arm, lap, flat, own, holder, facet);
    const chuck = clearances(drawing).find((c) => c.part === "chuck");
    // The chuck's lower side is 14.5 - 15 = -0.5 mm, under the surface and over the lap.
    expect(chuck?.mm).toBeCloseTo(-0.5, 9);
    const findings = rigFindings("t", arm, lap, flat, own, drawing, finished);
    expect(findings.map((f) => f.code)).toContain("hits-lap");
    expect(findings.find((f) => f.code === "hits-lap")?.data.part).toBe("chuck");
  });

  it("warns of a facet over the rim or across the dead centre", () => {
    const rim = drawRig(arm, { ...lap, diameterMm: 120 }, pose, setting, null, facet);
    const codes = (drawing: typeof rim) =>
      rigFindings("t", arm, lap, pose, setting, drawing, finished).map((f) => f.code);
    expect(codes(rim)).toEqual(["facet-over-rim"]);
    const centred = settingAtLength(arm, lap, pose, 260 / COS20);
    expect(
      rigFindings("t", arm, lap, pose, centred, drawRig(arm, lap, pose, centred, null, facet), finished).map(
        (f) => f.code,
      ),
    ).toContain("facet-over-dead-centre");
  });

  it("offers another length of the arm when the best radius has the pivot too high", () => {
    const low: Arm = { ...arm, lengthMm: [150, 240], pivotHeightMm: [0, 85] };
    const own = rigSetting(low, lap, pose);
    expect(own.reachable).toBe(false);
    const length = otherLength(low, lap, pose, own)!;
    // h + L sin 20 = 85 at L = 70.5 / sin 20 = 206.13, which lands at 260 - 193.7 = 66.3 mm, within the band.
    expect(length).toBeCloseTo(70.5 / SIN20, 6);
    expect(settingAtLength(low, lap, pose, length).reachable).toBe(true);
  });

  it("says by how much the arm must be longer, and by hand when no arm can", () => {
    const short: Arm = { ...arm, lengthMm: [100, 180] };
    const needed = extensionNeeded(short, lap, pose)!;
    // Outer end of the band: 260 - 80 = 180 level, L = 180 / cos 20 = 191.55.
    expect(needed.lengthMm).toBeCloseTo(180 / COS20, 6);
    expect(needed.byMm).toBeCloseTo(180 / COS20 - 180, 6);
    const pole = { ...pose, armAngleDeg: 90 };
    expect(extensionNeeded(arm, lap, pole)).toBeNull();
    const own = rigSetting(arm, lap, pole);
    const findings = rigFindings(
      "t",
      arm,
      lap,
      pole,
      own,
      drawRig(arm, lap, pole, own, null, facet),
      finished,
    );
    const guide = findings.find((f) => f.code === "guide-by-hand");
    expect(guide?.data).toEqual({ leanDeg: 0, ...finished });
  });

  it("draws the way by hand: the dop along a block that stands on the lap clear of the piece", () => {
    const holder = { dop: { diameterMm: 10, lengthMm: 30 }, seatMm: Math.sqrt(15 ** 2 - 5 ** 2) };
    const upright = drawGuide({ ...pose, armAngleDeg: 90, planeMm: 14.5 }, holder, facet);
    // The dop's right side is 5 mm from its axis; the face runs from 3 mm above the ball, 14.5 + 18, to the dop's end, 14.5 + 14.142 + 30.
    expect(upright.block.slice(0, 2).flat()).toEqual(
      [5, 32.5, 5, 44.5 + holder.seatMm].map((x) => expect.closeTo(x, 9)),
    );
    for (const armAngleDeg of [90, 64, 40]) {
      const { block, dop, centre } = drawGuide({ ...pose, armAngleDeg }, holder, facet);
      expect(block).toHaveLength(6);
      for (const [x, z] of block) {
        expect(z).toBeGreaterThanOrEqual(0);
        expect(Math.hypot(x - centre[0], z - centre[1])).toBeGreaterThan(15);
      }
      // The face is parallel to the dop, along its lower side.
      const [low, high] = block;
      const lean = (Math.atan2(high[1] - low[1], high[0] - low[0]) * 180) / Math.PI;
      expect(lean).toBeCloseTo(armAngleDeg, 9);
      expect(dop).toHaveLength(4);
    }
    expect(drawGuide({ ...pose, armAngleDeg: -20 }, holder, facet).block).toEqual([]);
    expect(drawGuide({ ...pose, armAngleDeg: 90 }, null, facet).block).toHaveLength(6);
  });

  it("cuts a shallow back tier before turning when dop and arm stay clear, and not when they don't", () => {
    const shallow = { armAngleDeg: 3, planeMm: 14.5, radiusMm: 15 };
    const draw = (dopMm: number) => (p: typeof shallow, s: ReturnType<typeof rigSetting>) =>
      drawRig(arm, lap, p, s, { dop: { diameterMm: dopMm, lengthMm: 260 }, seatMm: 10 }, facet);
    const high: Arm = { ...arm, pivotHeightMm: [-20, 250] };
    const setting3 = beforeTurning(high, lap, shallow, draw(6));
    // Tipped up by 3 degrees: 14.5 - L sin 3, about 4 mm above the surface.
    expect(setting3?.pivotHeightMm).toBeCloseTo(14.5 - 200 * Math.tan((3 * Math.PI) / 180), 6);
    expect(beforeTurning(high, lap, shallow, draw(28))).toBeNull();
    expect(beforeTurning({ ...arm, pivotHeightMm: [10, 250] }, lap, shallow, draw(6))).toBeNull();
  });

  it("names points that a ruler can touch", () => {
    const points = rulerPoints(pose, setting);
    expect(points.hingeToFarSkinMm).toBeCloseTo(setting.armLengthMm + 15, 9);
    expect(points.surfaceToHingeMm).toBe(setting.pivotHeightMm);
  });
});
