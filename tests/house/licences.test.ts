/** Every package that reaches a person's browser or terminal is under a permissive licence. */
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";

const top = fileURLToPath(new URL("../..", import.meta.url));
const PERMISSIVE =
  /^(MIT|MIT-0|ISC|Apache-2\.0|BSD-2-Clause|BSD-3-Clause|0BSD|Zlib|Unlicense|CC0-1\.0|OFL-1\.1|BlueOak-1\.0\.0|Python-2\.0)$/;

interface LockedPackage {
  readonly license?: string;
  readonly dev?: boolean;
  readonly optional?: boolean;
}

/** The licence a package states in the lock file, or else in its own file. */
function licenceOf(path: string, locked: LockedPackage): string {
  if (locked.license) return locked.license;
  const file = join(top, path, "package.json");
  return existsSync(file)
    ? String(JSON.parse(readFileSync(file, "utf8")).license ?? "none stated")
    : "none stated";
}

it("uses only permissive licences outside development", () => {
  const { packages } = JSON.parse(readFileSync(join(top, "package-lock.json"), "utf8")) as {
    packages: Record<string, LockedPackage>;
  };
  const used = Object.entries(packages).filter(([path, p]) => path !== "" && !p.dev);
  expect(used.length).toBeGreaterThan(20);
  const wrong = used
    .map(([path, p]) => ({ path, licence: licenceOf(path, p) }))
    .filter(
      ({ licence }) =>
        !licence
          .replace(/[()]/g, "")
          .split(/ OR | AND /)
          .every((one) => PERMISSIVE.test(one)),
    )
    .map(({ path, licence }) => `${path}: ${licence}`);
  expect(wrong).toEqual([]);
});
