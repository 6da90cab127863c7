/**
 * The checks of a plan's fields, one for one with the shapes in `document.ts` (a test that only the compiler runs holds the two in step).
 * Only fields are judged here, each by itself; how tiers refer to one another is judged in `references.ts`.
 */
import * as z from "zod/mini";
import { GLASS_NAMES } from "../optics/glasses.ts";
import { BOND_KINDS } from "./bonds.ts";
import { inside } from "./inside-schema.ts";
import { COUNTS, CURRENCY, isWithin, MARK, RANGES, TEXT } from "./limits.ts";
import { RULES } from "./rules/records.ts";
import { fields, id, limits, list, needs, number, rgb, span, text, word, yesNo } from "./schema-fields.ts";

const [firstRule, ...moreRules] = Object.values(RULES).map(({ schema }) => schema);
const depth = z.discriminatedUnion(
  "rule",
  [firstRule, ...moreRules],
  needs({ kind: "depth-rule", words: Object.keys(RULES) }),
);

const glass = z.union(
  [
    z.enum(GLASS_NAMES),
    fields({
      name: text(TEXT.name),
      nd: number(RANGES.nd),
      vd: number(RANGES.vd),
      densityGcm3: number(RANGES.densityGcm3),
    }),
  ],
  needs({ kind: "glass", words: GLASS_NAMES.map((name) => `"${name}"`) }),
);

const side = word("front", "back");
const dopSizes = {
  diameterMm: number(RANGES.sizeMm),
  lengthMm: z.optional(number(RANGES.lengthMm)),
  chuckDiameterMm: z.optional(number(RANGES.sizeMm)),
};
const tint = z.optional(fields({ rgb, atMm: number(RANGES.sizeMm) }));
export const piece = fields({
  diameterMm: number(RANGES.diameterMm),
  otherDiametersMm: z.optional(list(number(RANGES.diameterMm), COUNTS.otherDiameters)),
  glass,
  tint,
  seeds: z.optional(
    fields({
      count: number(RANGES.seedBubbles),
      diameterMm: number(RANGES.seedMm),
      seed: z.optional(number(RANGES.seed)),
    }),
  ),
  waviness: z.optional(
    fields({
      slopeDeg: number(RANGES.waveSlopeDeg),
      acrossMm: number(RANGES.waveAcrossMm),
      seed: z.optional(number(RANGES.seed)),
    }),
  ),
  cased: z.optional(list(fields({ diameterMm: number(RANGES.sizeMm), tint }), COUNTS.cased)),
  inside: z.optional(list(inside, COUNTS.inside)),
  dop: z.optional(fields({ side, ...dopSizes })),
  inkMarkDeg: z.optional(number(RANGES.turnDeg)),
});

const wheelStops = z
  .nullable(z.number(needs({ kind: "number-or-null", range: RANGES.wheelStops })))
  .check(
    z.refine(
      (value) => value === null || isWithin(RANGES.wheelStops, value),
      limits({ kind: "range-or-free", range: RANGES.wheelStops }),
    ),
  );
const finish = word("ground", "prepolished", "polished");
const calibration = fields({
  strokes: number(RANGES.strokes),
  widthMm: number(RANGES.widthMm),
  fromWidthMm: z.optional(number(RANGES.widthMm)),
  diameterMm: z.optional(number(RANGES.diameterMm)),
  radiusMm: z.optional(number(RANGES.distanceMm)),
  discStrokes: z.optional(number(RANGES.discStrokes)),
});
const stage = fields({
  id,
  name: text(TEXT.name),
  grainUm: number(RANGES.grainUm),
  grit: z.optional(
    fields({
      scale: word("fepa-f", "fepa-p", "jis", "ansi", "mesh"),
      number: number(RANGES.gritNumber),
    }),
  ),
  bond: z.optional(word(...BOND_KINDS)),
  damageUm: z.optional(number(RANGES.damageUm)),
  discMm: z.optional(number(RANGES.discMm)),
  calibration: z.optional(list(calibration, COUNTS.calibrations)),
  discStrokes: z.optional(number(RANGES.discStrokes)),
  leaves: z.optional(finish),
});
const setUp = fields({
  zeroDeg: z.optional(number(RANGES.turnDeg)),
  direction: z.optional(word("with", "against")),
  zeroLabel: z.optional(text(TEXT.label)),
  wheelStops: z.optional(wheelStops),
  dop: z.optional(fields({ ...dopSizes, runOutMm: z.optional(number(RANGES.spreadMm)) })),
});
const minutes = z.optional(number(RANGES.taskMin));
export const rig = fields({
  wheelStops,
  indexTrimDeg: z.optional(number(RANGES.indexTrimDeg)),
  arm: z.optional(
    fields({
      lengthMm: span(RANGES.lengthMm),
      pivotToAxisMm: number(RANGES.distanceMm),
      pivotHeightMm: span(RANGES.pivotHeightMm),
      hingeOffsetMm: z.optional(number(RANGES.hingeOffsetMm)),
    }),
  ),
  lap: z.optional(
    fields({
      diameterMm: number(RANGES.lengthMm),
      bandMm: span(RANGES.distanceMm),
      rpm: number(RANGES.rpm),
    }),
  ),
  stages: z.optional(list(stage, COUNTS.stages)),
  setUps: z.optional(fields({ front: z.optional(setUp), back: z.optional(setUp) })),
  spread: z.optional(
    fields({
      armDeg: z.optional(number(RANGES.spreadDeg)),
      stopDeg: z.optional(number(RANGES.spreadDeg)),
      depthMm: z.optional(number(RANGES.spreadMm)),
      againDeg: z.optional(number(RANGES.spreadDeg)),
    }),
  ),
  habits: z.optional(
    fields({
      prepareMin: minutes,
      setArmMin: minutes,
      findAngleMin: minutes,
      discMin: minutes,
      cleanMin: minutes,
      indexMin: minutes,
      inspectMin: minutes,
      measureMin: minutes,
      turnOverMin: minutes,
      strokeSeconds: z.optional(number(RANGES.strokeSeconds)),
    }),
  ),
});

const measured = {
  widthMm: z.optional(number(RANGES.widthMm)),
  heightMm: z.optional(number(RANGES.widthMm)),
  gapMm: z.optional(number(RANGES.gapMm)),
  edgeMm: z.optional(number(RANGES.widthMm)),
  acrossMm: z.optional(number(RANGES.acrossMm)),
  flatToSkinMm: z.optional(number(RANGES.acrossMm)),
  caliperMm: z.optional(number(RANGES.acrossMm)),
  readDeg: z.optional(number(RANGES.readDeg)),
  pivotHeightMm: z.optional(number(RANGES.pivotHeightMm)),
  armLengthMm: z.optional(number(RANGES.lengthMm)),
};
const asCut = fields({
  ...measured,
  sdMm: z.optional(number(RANGES.sdMm)),
  readSdDeg: z.optional(number(RANGES.sdDeg)),
  facets: z.optional(z.record(z.string(), fields(measured), needs({ kind: "measured-facets" }))),
});
export const tier = fields({
  id,
  name: text(TEXT.name),
  side,
  armAngleDeg: number(RANGES.armAngleDeg),
  count: number(RANGES.count),
  startDeg: number(RANGES.turnDeg),
  depth,
  finish: z.optional(finish),
  asCut: z.optional(asCut),
});

const share = z.optional(number(RANGES.share));
const amount = z.optional(number(RANGES.amount));
export const offer = fields({
  currency: z
    .string(needs({ kind: "currency" }))
    .check(z.refine((value) => CURRENCY.test(value), needs({ kind: "currency" }))),
  hourly: number(RANGES.amount),
  glassPerKg: amount,
  consumables: amount,
  blank: amount,
  overheadShare: share,
  taxShare: share,
  roundTo: z.optional(number(RANGES.roundTo)),
  terms: z.optional(text(TEXT.terms)),
  validDays: z.optional(number(RANGES.validDays)),
});

const maker = fields({
  name: z.optional(text(TEXT.name)),
  mark: z.optional(text(TEXT.mark).check(z.refine((value) => MARK.test(value), needs({ kind: "mark" })))),
});

const showing = fields({ caption: z.optional(text(TEXT.name)), price: z.optional(text(TEXT.name)) });

/** A plan's fields. Its output holds the known fields only; the difference to the input are the unknown ones. */
export const planSchema = fields({
  format: z.literal("glintwright-plan", needs({ kind: "format" })),
  version: z.literal(1, needs({ kind: "version", range: { min: 1, max: 1 } })),
  name: text(TEXT.name),
  notes: z.optional(text(TEXT.notes)),
  toleranceMm: z.optional(number(RANGES.toleranceMm)),
  piece,
  rig,
  tiers: list(tier, COUNTS.tiers),
  pictures: z.optional(z.record(z.string(), z.string(needs({ kind: "picture" })), needs({ kind: "object" }))),
  work: z.optional(fields({ tier: id, stage: id, facet: text(TEXT.facetId, 1), done: z.optional(yesNo) })),
  offer: z.optional(offer),
  maker: z.optional(maker),
  showing: z.optional(showing),
});
