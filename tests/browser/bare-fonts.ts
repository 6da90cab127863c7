/**
 * A machine without typefaces of its own: the browser sees only DejaVu, from a package, whatever is installed here. DejaVu runs
 * wider than most faces, so what holds there holds elsewhere; and every run of the tests stands on the same ground.
 */
import { mkdirSync, renameSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const HOME = fileURLToPath(new URL("../../.cache/fonts", import.meta.url));
const require = createRequire(import.meta.url);
const FONTS = join(dirname(require.resolve("dejavu-fonts-ttf/package.json")), "ttf");

/** What a browser's environment has to say for it. */
export function bareFonts(): { readonly FONTCONFIG_FILE: string } {
  mkdirSync(HOME, { recursive: true });
  const file = join(HOME, "fonts.conf");
  // put in place whole: another browser may be reading it
  const own = `${file}.${process.pid}`;
  writeFileSync(
    own,
    `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "urn:fontconfig:fonts.dtd">
<fontconfig><dir>${FONTS}</dir><cachedir>${HOME}</cachedir></fontconfig>
`,
  );
  renameSync(own, file);
  return { FONTCONFIG_FILE: file };
}
