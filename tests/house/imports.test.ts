/** Who may import whom, that the core is pure, that nothing goes round in a circle. */
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, normalize, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { mayImport, roomOf } from "./rooms.ts";

const top = fileURLToPath(new URL("../..", import.meta.url));
const files = readdirSync(join(top, "src"), { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
  .map((entry) => relative(top, join(entry.parentPath, entry.name)));

interface Import {
  readonly from: string;
  readonly of: string;
  /** Erased by the compiler: counts for who may know whom, not for circles. */
  readonly typeOnly: boolean;
  readonly lazy: boolean;
}

const IMPORT =
  /^\s*(?:import|export)\s+(type\s)?[^"';]*?from\s+"([^"]+)"|^\s*import\s+"([^"]+)"|import\(\s*"([^"]+)"\s*\)/gm;

function importsOf(file: string): Import[] {
  const text = readFileSync(join(top, file), "utf8");
  return [...text.matchAll(IMPORT)].map((m) => {
    const spec = m[2] ?? m[3] ?? m[4];
    const path = spec.split("?")[0];
    return {
      from: file,
      of: path.startsWith(".") ? normalize(join(dirname(file), path)) : path,
      typeOnly: m[1] !== undefined,
      lazy: m[4] !== undefined,
    };
  });
}

const imports = files.flatMap(importsOf);
const layerOf = (path: string) =>
  path.match(/^src\/([a-z]+)\//)?.[1] ?? (path.startsWith("src/") ? "main" : "package");
const isPackage = (path: string) =>
  !path.startsWith("src/") && !path.startsWith("shaders/") && !path.startsWith(".");

/** What the page's beginning, `src/main.tsx`, may know. */
const MAIN = ["ui", "state", "render", "worker", "words", "core"];

/** Whether a file may import another: both lie in one room, or `rooms.ts` lets the one's room know the other's. */
function mayTake(from: string, of: string): boolean {
  const [room, other] = [roomOf(from), roomOf(of)];
  if (other === null) return room === null;
  const may = room === null ? MAIN : [room, ...mayImport(room)];
  return may.some((name) => other === name || other.startsWith(`${name}/`));
}

describe("layers", () => {
  it("lets arrows run one way only, from room to room: as `rooms.ts` and each room's README say", () => {
    const wrong = imports
      .filter(({ from, of }) => of.startsWith("src/") && !mayTake(from, of))
      .map(({ from, of }) => `${from} -> ${of}`);
    expect(wrong).toEqual([]);
  });

  it("lets nobody but the page's beginning know the frame: places and sheets stand in tables that only the frame reads", () => {
    const wrong = imports
      .filter(({ of }) => of.startsWith("src/ui/app/"))
      .filter(({ from }) => !from.startsWith("src/ui/app/") && layerOf(from) !== "main")
      .map(({ from, of }) => `${from} -> ${of}`);
    expect(wrong).toEqual([]);
  });

  it("keeps React and three out of where they have no business", () => {
    const wrong = imports
      .filter(({ of }) => isPackage(of))
      .filter(({ from, of }) => {
        const layer = layerOf(from);
        const isReact = /^(react|react-dom|@react-|react-aria)/.test(of);
        const isThree = /^(three|@react-three)/.test(of);
        if (layer === "core" || layer === "words" || layer === "sheet")
          return isReact || isThree || of.startsWith("node:");
        if (layer === "state") return isThree || isReact;
        if (layer === "show") return isReact || isThree;
        if (layer === "render") return isReact || of.startsWith("@react-three");
        return false;
      })
      .map(({ from, of }) => `${from} -> ${of}`);
    expect(wrong).toEqual([]);
  });

  it("keeps the core free of clock, chance and the page", () => {
    const wrong = files
      .filter((file) => file.startsWith("src/core/"))
      .flatMap((file) => {
        const code = readFileSync(join(top, file), "utf8").replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, "");
        const found = code.match(
          /Math\.random|Date\.now|new Date\(|performance\.now|\bdocument\.(body|create|get|query)|\bwindow\./,
        );
        return found ? [`${file}: ${found[0]}`] : [];
      });
    expect(wrong).toEqual([]);
  });
});

it("has no circular import", () => {
  const next = new Map<string, string[]>();
  for (const { from, of, typeOnly, lazy } of imports)
    if (!typeOnly && !lazy && of.startsWith("src/")) next.set(from, [...(next.get(from) ?? []), of]);
  const done = new Set<string>();
  const circles: string[] = [];
  const walk = (file: string, path: readonly string[]) => {
    if (path.includes(file)) {
      circles.push([...path.slice(path.indexOf(file)), file].join(" -> "));
      return;
    }
    if (done.has(file)) return;
    for (const other of next.get(file) ?? []) walk(other, [...path, file]);
    done.add(file);
  };
  for (const file of files) walk(file, []);
  expect(circles).toEqual([]);
});
