/** How light meets each body inside the glass, by its number. */
import { hitBacking } from "./hit-backing.ts";
import { hitEllipsoid } from "./hit-ellipsoid.ts";
import { hitGrains } from "./hit-grains.ts";
import { hitPictureCore, hitPictureDisc } from "./hit-picture.ts";
import { hitPetals, hitRibbon } from "./hit-sheet.ts";
import { hitMedium } from "./media.ts";
import * as bodies from "./scene-design.ts";

export const HITS: Readonly<Record<bodies.BodyNumber, bodies.Hit>> = {
  [bodies.CORE]: hitEllipsoid,
  // no surface: only what runs through it is told, see `lengthWithin`
  [bodies.TINTED_CORE]: () => null,
  [bodies.BUBBLE]: hitEllipsoid,
  [bodies.RIBBON]: hitRibbon,
  [bodies.PETALS]: hitPetals,
  [bodies.BACKING]: hitBacking,
  [bodies.SPECKLE]: hitGrains,
  [bodies.PICTURE_DISC]: hitPictureDisc,
  [bodies.PICTURE_CORE]: hitPictureCore,
  [bodies.TWIST]: hitMedium,
  [bodies.MELTED_RIBBON]: hitMedium,
  [bodies.MELTED_PETALS]: hitMedium,
  [bodies.SWIRL]: hitMedium,
};
