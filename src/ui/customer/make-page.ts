/** A page for a customer, made on this device: the same file as the command line's, its pictures traced by the graphics card. */
import { script, style } from "virtual:show-bundle";
import { supportOf } from "../../core/check/size.ts";
import { scale } from "../../core/geometry/vec.ts";
import { LIGHT_SETTINGS, type LightName } from "../../core/optics/light-settings.ts";
import { tableFrame } from "../../core/optics/tabletop.ts";
import type { Plan } from "../../core/plan/document.ts";
import { fittedPage } from "../../core/show/fit-page.ts";
import { recipeOf, showPage } from "../../core/show/show-page.ts";
import { type Laid, layDown, sceneOfShown, shownTable, showPiece } from "../../core/show/show-piece.ts";
import { DEFAULT_OPTIONS, packScene, STILL_MEETINGS } from "../../render/pack-scene.ts";
import type { PackedScene } from "../../render/packed-scene.ts";
import type { View } from "../../render/view.ts";
import { viewOfEye } from "../../show/eye.ts";
import { solid, solved } from "../../state/derived.ts";
import { showSaid } from "../../words/show.ts";
import { picturesOf } from "../look/look-scene.ts";
import { lookOf } from "../look/look-settings.ts";
import { downOf } from "../look/lying.ts";
import { stillPicture, tracedPicture, untilReady } from "../look/traced.ts";
import type { Studio } from "../studio.ts";

/**
 * All round: how many, how wide, samples a pixel (smoothed, they are worth several times as many), and how many times as wide the
 * first one is. Without a card each takes its time, so there are fewer and smaller ones.
 */
const ON_CARD = { count: 24, size: 240, samples: 32, finer: 2 } as const;
const IN_SOFTWARE = { count: 12, size: 128, samples: 8, finer: 2 } as const;

const LEAN_DEG = 15;
/** As the page's style has its ground by day. */
const GROUND = "#f2efe9";

export interface PageTexts {
  readonly caption: string;
  readonly price: string;
  readonly light: LightName;
  readonly withRecipe: boolean;
}

/** A traced picture on the page's ground. */
async function onGround(picture: ImageData): Promise<OffscreenCanvas> {
  const canvas = new OffscreenCanvas(picture.width, picture.height);
  const context = canvas.getContext("2d");
  if (!context) throw new Error("the browser has no canvas of this size");
  context.fillStyle = GROUND;
  context.fillRect(0, 0, picture.width, picture.height);
  // putting pixels would replace the ground; drawing lets it through
  context.drawImage(await createImageBitmap(picture), 0, 0);
  return canvas;
}

/** @param quality of JPEG, per cent */
async function addressOf(canvas: OffscreenCanvas, quality: number): Promise<string> {
  const blob = await canvas.convertToBlob({ type: "image/jpeg", quality: quality / 100 });
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result));
    reader.onerror = () => reject(reader.error);
    reader.readAsDataURL(blob);
  });
}

/** How the piece lies on the table that Look shows it on; undefined in the hand. */
export function laidOf(studio: Studio, plan: Plan): Laid | undefined {
  const { table, rest } = lookOf(studio).getState();
  if (table === "none") return undefined;
  const down = downOf(plan, rest);
  return {
    material: table,
    up: scale(down, -1),
    floor: -supportOf(solid(plan), down),
    onRing: rest === "ring",
  };
}

async function traced(
  studio: Studio,
  packed: PackedScene,
  view: View,
  size: number,
  samples: number,
  signal: AbortSignal,
) {
  return onGround(
    await stillPicture(studio, packed, view, { width: size, height: size, samples, exposure: 0, signal }),
  );
}

/**
 * @param onDone gets how many pictures are traced, of how many
 * @throws PageTooLarge; NothingLeft for a piece that has vanished; the signal's reason; Error where the device can't trace
 */
export async function makePage(
  studio: Studio,
  plan: Plan,
  { caption, price, light, withRecipe }: PageTexts,
  signal: AbortSignal,
  onDone: (done: number, of: number) => void,
): Promise<string> {
  // what was solved may be of the plan before its maker was named
  const answer = { ...solved(plan), plan };
  const piece = showPiece(answer, picturesOf(plan));
  await untilReady(studio, signal);
  const lit = { kind: "setting", setting: LIGHT_SETTINGS[light], turnRad: 0 } as const;
  const laid = laidOf(studio, plan);
  const table = laid && shownTable(laid, plan.piece.diameterMm);
  const packed = packScene(layDown(sceneOfShown(piece, lit), table), {
    ...DEFAULT_OPTIONS,
    maxMeetings: STILL_MEETINGS,
    ...(table && { behind: "light" }),
  });
  const level = table ? tableFrame(table.up) : null;
  const viewAt = (turnDeg: number) => viewOfEye({ turnDeg, leanDeg: LEAN_DEG }, 1, level);
  const isSoftware = tracedPicture(studio).renderer.current.check.code === "software";
  const { count, size, samples, finer } = isSoftware ? IN_SOFTWARE : ON_CARD;
  const said = showSaid(answer, withRecipe);
  const pageWith = (still: string, pictures: readonly string[]): string =>
    showPage({
      name: plan.name,
      diameterMm: plan.piece.diameterMm,
      caption,
      price,
      maker: plan.maker,
      data: { piece, light, ...(table && { table }), pictures, said },
      still,
      script,
      style,
      plan: withRecipe ? recipeOf(plan) : null,
    });
  // what is too large without any picture needs none traced
  await fittedPage(() => pageWith("", []));
  onDone(0, count + 1);
  const first = await traced(studio, packed, viewAt(0), finer * size, samples, signal);
  const allRound: OffscreenCanvas[] = [];
  for (let k = 0; k < count; k++) {
    onDone(k + 1, count + 1);
    allRound.push(await traced(studio, packed, viewAt((360 * k) / count), size, samples, signal));
  }
  return fittedPage(async (quality) => {
    const [still, ...pictures] = await Promise.all(
      [first, ...allRound].map((one) => addressOf(one, quality)),
    );
    return pageWith(still, pictures);
  });
}
