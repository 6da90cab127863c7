/** `npm start`: sets up what is missing, builds when the sources changed, serves the app on this machine and says where. */
import { existsSync, readdirSync, statSync } from "node:fs";
import { join } from "node:path";
import { ensurePackages, must, top } from "../../tests/setup.mjs";

const newestIn = (folder) =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .reduce(
      (newest, entry) => Math.max(newest, statSync(join(entry.parentPath ?? entry.path, entry.name)).mtimeMs),
      0,
    );

function ensureBuilt() {
  const built = join(top, "dist/index.html");
  const sources = Math.max(
    ...["src", "shaders", "public"].map((folder) => newestIn(join(top, folder))),
    statSync(join(top, "vite.config.ts")).mtimeMs,
    statSync(join(top, "package-lock.json")).mtimeMs,
  );
  if (existsSync(built) && statSync(built).mtimeMs >= sources) return;
  console.log("Building the app ...");
  must("npx", ["vite", "build", "--logLevel", "warn"]);
}

const FIRST_PORT = 4173;

/** Listens where it was asked to, or else at the first port from `FIRST_PORT` that is free. */
function listen(server) {
  let port = Number(process.env.PORT ?? FIRST_PORT);
  server.on("error", (error) => {
    if (error.code !== "EADDRINUSE" || process.env.PORT || port >= FIRST_PORT + 20) throw error;
    port++;
    server.listen(port, "localhost");
  });
  server.on("listening", () =>
    console.log(`Glintwright is at http://localhost:${server.address().port}/  (Ctrl+C ends it)`),
  );
  server.listen(port, "localhost");
}

ensurePackages();
ensureBuilt();
// Packages are there only now.
const { register } = await import("tsx/esm/api");
register();
const { folderServer } = await import("./serve.ts");
listen(folderServer(join(top, "dist")));
