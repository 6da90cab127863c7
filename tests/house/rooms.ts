/**
 * The rooms of the house: each folder of `src`, and each one of `src/core` and `src/ui`. One table says what a room may import from; the
 * README of each says the same in its last line, and what lives there.
 */

/** What the folders of `src` may import from besides themselves. */
const LAYERS: Readonly<Record<string, readonly string[]>> = {
  core: [],
  words: ["core"],
  sheet: ["core", "words"],
  state: ["core"],
  worker: ["core", "sheet", "words"],
  render: ["core", "state", "worker"],
  ui: ["core", "render", "sheet", "show", "state", "words", "worker"],
  show: ["core", "render"],
  cli: ["core", "sheet", "words", "worker"],
};

/** What the rooms of the core may import from each other. */
const CORE: Readonly<Record<string, readonly string[]>> = {
  geometry: [],
  plan: ["geometry", "inside", "optics"],
  optics: ["geometry", "inside", "measure", "plan"],
  inside: ["geometry", "optics", "plan"],
  check: ["follow", "geometry", "inside", "optics", "plan"],
  follow: ["check", "geometry", "plan"],
  bench: ["check", "follow", "geometry", "inside", "optics", "plan"],
  measure: ["bench", "check", "geometry", "inside", "optics", "plan"],
  ideas: ["bench", "check", "follow", "geometry", "inside", "measure", "optics", "plan"],
  models: ["geometry", "inside", "optics", "plan"],
  offer: ["bench", "geometry", "measure", "optics", "plan"],
  show: ["geometry", "inside", "measure", "models", "optics", "plan"],
};

/** The room that a path of the repository lies in: `core/plan`, `ui/look`, `state`; null for the page's beginning and what is outside. */
export function roomOf(path: string): string | null {
  const [, layer, room] = /^src\/([a-z]+)\/(?:([a-z-]+)\/)?/.exec(path) ?? [];
  if (!layer) return null;
  return room && (layer === "core" || layer === "ui") ? `${layer}/${room}` : layer;
}

const isStyle = (room: string): boolean => room === "ui/theme";

/** What a room may import from besides itself; a name stands for all that lies in that folder. */
export function mayImport(room: string): readonly string[] {
  const [layer, inner] = room.split("/");
  if (isStyle(room)) return [];
  if (inner === undefined) return LAYERS[layer];
  return layer === "core" ? CORE[inner].map((name) => `core/${name}`) : [...LAYERS[layer], "ui"].sort();
}

/** The last line of a room's README. */
export const ruleInWords = (room: string): string => {
  const named = mayImport(room).map((name) => `\`${name}\``);
  return `May import: ${named.length === 0 ? "nothing outside it" : named.join(", ")}.`;
};
