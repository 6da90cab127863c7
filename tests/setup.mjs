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

const places = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];
const findChromium = () => [process.env.CHROMIUM, ...places].find((path) => path && existsSync(path));

/** Path of a Chromium; Debian's is installed through apt when none is found. */
export function ensureChromium() {
  const found = findChromium();
  if (found) return found;
  console.log("No Chromium found: installing Debian's ...");
  try {
    must("apt-get", ["update", "-qq"]);
    must("apt-get", ["install", "-y", "-qq", "chromium"], {
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
