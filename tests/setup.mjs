/** What a fresh machine lacks, installed: packages from the lock file, and a Chromium for the browser tests. */
import { spawnSync } from "node:child_process";
import { existsSync, statSync } from "node:fs";
import { fileURLToPath } from "node:url";

export const top = fileURLToPath(new URL("..", import.meta.url));

/** Runs a command with its output shown; throws its name when it fails. */
export function must(command, args, options = {}) {
  const done = spawnSync(command, args, { cwd: top, stdio: "inherit", ...options });
  if (done.error) throw done.error;
  if (done.status !== 0)
    throw new Error(`${command} ${args.join(" ")} ended with ${done.status ?? done.signal}`);
}

const age = (path) => (existsSync(path) ? statSync(path).mtimeMs : 0);

/** `npm ci` when there are no packages or the lock file is newer than they are. */
export function ensurePackages() {
  if (age(`${top}node_modules/.package-lock.json`) >= age(`${top}package-lock.json`)) return;
  console.log("Installing packages (first time, or the lock file changed) ...");
  must("npm", ["ci", "--no-audit", "--no-fund", "--loglevel=error"]);
  must("touch", [`${top}node_modules/.package-lock.json`]);
}

/**
 * Debian's Chromium without windows: pages, workers, storage, WebGL and prints are the same, and since nothing has to be drawn around
 * a page a visit costs a quarter less processor time.
 */
const SHELL = "chromium-headless-shell";
const BROWSERS = ["chromium", "chromium-browser", "google-chrome"];
/**
 * Path of a Chromium: `CHROMIUM`, or the first that is there; undefined where none is.
 * @param isForTests the one without windows first; what is measured has the browser that people have
 */
export function findChromium(isForTests = true) {
  const names = isForTests ? [SHELL, ...BROWSERS] : [...BROWSERS, SHELL];
  const paths = [process.env.CHROMIUM, ...names.map((name) => `/usr/bin/${name}`)];
  return paths.find((path) => path && existsSync(path));
}

/** Path of a Chromium; Debian's is installed through apt when none is found. */
export function ensureChromium() {
  const found = findChromium();
  if (found) return found;
  console.log("No Chromium found: installing Debian's ...");
  try {
    must("apt-get", ["update", "-qq"]);
    must("apt-get", ["install", "-y", "-qq", SHELL], {
      env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
    });
  } catch (error) {
    throw new Error(
      `The browser tests need Chromium and it could not be installed (${error.message}). Install Chromium by hand, or set CHROMIUM to its path.`,
    );
  }
  const installed = findChromium();
  if (!installed)
    throw new Error("Chromium was installed but is not where it was expected; set CHROMIUM to its path.");
  return installed;
}
