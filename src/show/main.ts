/**
 * The script of a customer's page: the piece traced in light, turned by hand, keys or by itself until touched. Where light can't be
 * traced, the pictures made with the page turn instead. Knows nothing of plans: numbers to trace by is all that the page holds.
 */
import { LIGHT_SETTINGS } from "../core/optics/light-settings.ts";
import type { Light } from "../core/optics/lights.ts";
import { tableFrame } from "../core/optics/tabletop.ts";
import type { ShowData, ShowSaid } from "../core/show/show-page.ts";
import { layDown, sceneOfShown } from "../core/show/show-piece.ts";
import { LookRenderer, type LookState } from "../render/look-renderer.ts";
import { DEFAULT_OPTIONS, packScene, type TraceOptions } from "../render/pack-scene.ts";
import { type Eye, leant, turned, viewOfEye } from "./eye.ts";

function part<T extends HTMLElement>(id: string, kind: new () => T): T {
  const found = document.getElementById(id);
  if (!(found instanceof kind)) throw new Error(`the page has no ${id}`);
  return found;
}

const data: ShowData = JSON.parse(part("data", HTMLScriptElement).text);
const picture = part("picture", HTMLDivElement);
const still = part("still", HTMLImageElement);
const canvas = part("glass", HTMLCanvasElement);
const turnButton = part("turn", HTMLButtonElement);
const lightSlide = part("light", HTMLInputElement);
const uncutSlide = part("uncut", HTMLInputElement);

/** One turn in so many milliseconds. */
const TURN_MS = 24_000;
/** A hand that crosses the picture turns the piece by half a turn; a key by a twelfth of that. */
const DRAG_DEG = 180;
const KEY_DEG = 15;
/** A browser that was away for longer goes on where it was. */
const LONGEST_STEP_MS = 100;

const language = (): string =>
  navigator.languages.map((tag) => tag.slice(0, 2).toLowerCase()).find((tag) => tag in data.said) ?? "en";

function sayAll(said: ShowSaid, lang: string): void {
  document.documentElement.lang = lang;
  for (const element of document.querySelectorAll<HTMLElement>("[data-say]")) {
    const text = said[element.dataset.say as keyof ShowSaid];
    if (typeof text === "string") element.textContent = text;
  }
  document.querySelectorAll("#recipe li").forEach((line, i) => {
    line.textContent = said.recipeLines[i];
  });
  picture.setAttribute("aria-label", said.piece);
}

const lang = language();
const said = data.said[lang];
const stillness = matchMedia("(prefers-reduced-motion: reduce)");

/** Round what the eye goes, where that is a table. */
const level = data.table ? tableFrame(data.table.up) : null;
const hasTable = level !== null;

let eye: Eye = { turnDeg: 0, leanDeg: 15 };
let isTurning = !stillness.matches;
let isTurned = false;
let frame = 0;
let last: number | null = null;
/** Whether a hand or a key has asked for anything. */
let isTouched = false;
/** The traced picture is the one that shows. */
let isTraced = false;

/** Without them a drawing stands in, which doesn't turn. */
const hasPictures = data.pictures.length > 0;

function standStill(): void {
  setTurning(false);
  part("hint", HTMLParagraphElement).hidden = true;
  part("controls", HTMLDivElement).hidden = true;
}

/** Whether the pictures made beforehand show what is asked for: they know no other light and no uncut ball. */
const isAsPictured = (): boolean => Number(lightSlide.value) === 0 && Number(uncutSlide.value) === 0;

/** Samples from which a picture traced in software is worth more than one made beforehand: at so many it is first smoothed. */
const SOFTWARE_SAMPLES = 8;

/**
 * Whether what is traced is better to look at than what was made beforehand: never coarse before anybody has turned the piece, and
 * where there is no card, not while it is turned either.
 */
function isBetter({ phase, samples, isCoarse, check }: LookState): boolean {
  if (phase !== "tracing" && phase !== "clean") return false;
  // once traced it stays, until there is more of it: a picture would be of something else
  if (hasPictures && !isAsPictured()) return samples > 0 || isTraced;
  if (samples === 0) return false;
  if (!hasPictures) return check.code !== "software" || !isCoarse || isTouched;
  if (check.code === "software") return !isCoarse && samples >= SOFTWARE_SAMPLES;
  return !isCoarse || isTurned;
}

/** Light is traced into the canvas; where it can't be, the pictures made beforehand stand in. */
const renderer = new LookRenderer(canvas, showWhatIsBetter);
const isSoftware = renderer.current.check.code === "software";
/** Without a card nothing traced would show while the piece turns by itself: then nothing is, and the pictures turn evenly. */
const rests = (): boolean => isSoftware && hasPictures && isTurning && isAsPictured();
const wake = (): void => renderer.setActive(!document.hidden && !rests());

function showWhatIsBetter(state: LookState): void {
  // without a card a piece that turns by itself would never be seen but coarsely
  if (state.check.code === "software" && !hasPictures && !isTouched && isTurning) setTurning(false);
  const shows = isBetter(state) && !rests();
  const isUnable = state.phase === "unable";
  if (shows === isTraced && isUnable === document.body.classList.contains("unable")) return;
  isTraced = shows;
  canvas.hidden = !shows;
  still.hidden = shows;
  document.body.classList.toggle("unable", isUnable);
  part("made", HTMLParagraphElement).hidden = !isUnable;
  part("traced", HTMLDivElement).hidden = isUnable;
  if (isUnable && !hasPictures) standStill();
  showStill();
}

function light(): Light {
  const setting = LIGHT_SETTINGS[data.light];
  return { kind: "setting", setting, turnRad: (Number(lightSlide.value) * Math.PI) / 180 };
}

function setScenes(): void {
  const uncut = Number(uncutSlide.value) / 100;
  const sceneOf = (isUncut: boolean) =>
    layDown(sceneOfShown(data.piece, light(), isUncut), data.table, isUncut);
  const scenes = uncut > 0 ? [sceneOf(false), sceneOf(true)] : [sceneOf(false)];
  const options: TraceOptions = { ...DEFAULT_OPTIONS, ...(data.table && { behind: "light" }) };
  renderer.setScenes(scenes.map((scene) => packScene(scene, options)));
  renderer.setDisplay({ exposure: 0, divider: 1 - uncut, sideBySide: false });
}

/** The picture made from nearest by; the first one, which is finer, until the piece is turned. */
function showStill(): void {
  const { length } = data.pictures;
  if (still.hidden || !isTurned || length === 0) return;
  still.src = data.pictures[Math.round((eye.turnDeg / 360) * length) % length];
}

function look(next: Eye, isMoving: boolean): void {
  isTurned ||= next.turnDeg !== eye.turnDeg || next.leanDeg !== eye.leanDeg;
  eye = next;
  renderer.setView(viewOfEye(eye, 1, level), isMoving);
  showStill();
  const degrees = String(Math.round(eye.turnDeg) % 360);
  picture.setAttribute("aria-valuenow", degrees);
  picture.setAttribute("aria-valuetext", said.turnedBy.replace("{}", degrees));
}

function turnOn(now: number): void {
  const step = Math.min(LONGEST_STEP_MS, now - (last ?? now));
  last = now;
  if (step > 0) look(turned(eye, (360 * step) / TURN_MS), true);
  frame = requestAnimationFrame(turnOn);
}

function setTurning(wanted: boolean): void {
  isTurning = wanted;
  turnButton.textContent = wanted ? said.stop : said.turn;
  cancelAnimationFrame(frame);
  last = null;
  if (wanted) frame = requestAnimationFrame(turnOn);
  wake();
  showWhatIsBetter(renderer.current);
}

function touched(): void {
  isTouched = true;
  if (isTurning) setTurning(false);
  document.body.classList.add("touched");
}

function listenToHand(): void {
  let from: PointerEvent | null = null;
  picture.addEventListener("pointerdown", (event) => {
    touched();
    from = event;
    picture.setPointerCapture(event.pointerId);
  });
  picture.addEventListener("pointermove", (event) => {
    if (from?.pointerId !== event.pointerId) return;
    const perPixel = DRAG_DEG / picture.clientWidth;
    const [right, up] = [event.clientX - from.clientX, event.clientY - from.clientY];
    from = event;
    // the near side follows the hand
    look(leant(turned(eye, -right * perPixel), up * perPixel, hasTable), true);
  });
  for (const end of ["pointerup", "pointercancel"] as const)
    picture.addEventListener(end, () => {
      from = null;
    });
}

const movesOfKeys = new Map<string, (from: Eye) => Eye>([
  ["ArrowLeft", (from) => turned(from, -KEY_DEG)],
  ["ArrowRight", (from) => turned(from, KEY_DEG)],
  ["ArrowUp", (from) => leant(from, KEY_DEG, hasTable)],
  ["ArrowDown", (from) => leant(from, -KEY_DEG, hasTable)],
  ["Home", (from) => ({ ...from, turnDeg: 0 })],
]);

function listenToKeys(): void {
  picture.addEventListener("keydown", (event) => {
    const move = movesOfKeys.get(event.key);
    if (!move || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    touched();
    look(move(eye), false);
  });
}

const fitPicture = (): void => {
  const side = Math.max(1, picture.clientWidth) * Math.min(2, devicePixelRatio);
  renderer.resize(side, side);
};

sayAll(said, lang);
saySlides();
part("controls", HTMLDivElement).hidden = !hasPictures && document.body.classList.contains("unable");
listenToHand();
listenToKeys();
turnButton.addEventListener("click", () => {
  isTouched = true;
  setTurning(!isTurning);
});
/** What a slide stands at, as a screen reader says it. */
function saySlides(): void {
  lightSlide.setAttribute("aria-valuetext", said.turnedBy.replace("{}", lightSlide.value));
  uncutSlide.setAttribute("aria-valuetext", `${uncutSlide.value}\u00a0%`);
}

for (const slide of [lightSlide, uncutSlide])
  slide.addEventListener("input", () => {
    saySlides();
    // without a card what is traced is coarse as long as it turns
    if (isSoftware) touched();
    setScenes();
    wake();
  });
document.addEventListener("visibilitychange", wake);
stillness.addEventListener("change", () => {
  if (stillness.matches) setTurning(false);
});
new ResizeObserver(fitPicture).observe(picture);
fitPicture();
setScenes();
look(eye, false);
setTurning(isTurning);
