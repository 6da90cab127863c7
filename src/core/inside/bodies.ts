/** Every body inside the glass, by its number: its name in the shaders, how light meets it, how it is drawn. */
import {
  type Drawn,
  drawnMeltedPetals,
  drawnMeltedRibbon,
  drawnPetals,
  drawnRibbon,
  drawnSwirl,
  drawnTwist,
} from "./drawn.ts";
import { hitBacking } from "./hit-backing.ts";
import { hitEllipsoid } from "./hit-ellipsoid.ts";
import { hitGrains } from "./hit-grains.ts";
import { hitPictureCore, hitPictureDisc } from "./hit-picture.ts";
import { hitPetals, hitRibbon } from "./hit-sheet.ts";
import { hitMedium } from "./media.ts";
import type { BodyNumber } from "./records.ts";
import * as bodies from "./scene-design.ts";

interface Body {
  /** `LENS`: the shaders have its number under this name, and its code where `HAS_LENS`. A test looks whether they do. */
  readonly glsl: string;
  readonly hit: bodies.Hit;
  readonly drawn: Drawn;
}

export const BODIES: Readonly<Record<BodyNumber, Body>> = {
  [bodies.CORE]: { glsl: "CORE", hit: hitEllipsoid, drawn: "ellipsoid" },
  // no surface: only what runs through it is told, see `lengthWithin`
  [bodies.TINTED_CORE]: { glsl: "TINTED_CORE", hit: () => null, drawn: "ellipsoid" },
  [bodies.BUBBLE]: { glsl: "BUBBLE", hit: hitEllipsoid, drawn: "ellipsoid" },
  [bodies.RIBBON]: { glsl: "RIBBON", hit: hitRibbon, drawn: drawnRibbon },
  [bodies.PETALS]: { glsl: "PETALS", hit: hitPetals, drawn: drawnPetals },
  [bodies.BACKING]: { glsl: "BACKING", hit: hitBacking, drawn: "cap" },
  [bodies.SPECKLE]: { glsl: "SPECKLE", hit: hitGrains, drawn: "grains" },
  [bodies.PICTURE_DISC]: { glsl: "PICTURE_DISC", hit: hitPictureDisc, drawn: "disc" },
  [bodies.PICTURE_CORE]: { glsl: "PICTURE_CORE", hit: hitPictureCore, drawn: "ellipsoid" },
  [bodies.TWIST]: { glsl: "TWIST", hit: hitMedium, drawn: drawnTwist },
  [bodies.MELTED_RIBBON]: { glsl: "MELTED_RIBBON", hit: hitMedium, drawn: drawnMeltedRibbon },
  [bodies.MELTED_PETALS]: { glsl: "MELTED_PETALS", hit: hitMedium, drawn: drawnMeltedPetals },
  [bodies.SWIRL]: { glsl: "SWIRL", hit: hitMedium, drawn: drawnSwirl },
};
