/** `npm start`: sets up what is missing, builds when the sources changed, serves the app on this machine and says where. */
import { createReadStream, existsSync, readdirSync, statSync } from "node:fs";
import { createServer } from "node:http";
import { extname, join, normalize } from "node:path";
import { ensurePackages, must, top } from "../../tests/setup.mjs";

const TYPES = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json",
  ".webmanifest": "application/manifest+json",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".woff2": "font/woff2",
  ".wasm": "application/wasm",
};

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

/** The file a request means, or null when there is none. Nothing outside the folder is ever served. */
function fileFor(url) {
  const path = normalize(decodeURIComponent(new URL(url, "http://localhost").pathname));
  const file = join(top, "dist", path.endsWith("/") ? `${path}index.html` : path);
  if (!file.startsWith(join(top, "dist"))) return null;
  return existsSync(file) && statSync(file).isFile() ? file : null;
}

const server = createServer((request, response) => {
  let file = null;
  try {
    file = fileFor(request.url ?? "/");
  } catch (error) {
    if (!(error instanceof URIError)) throw error;
  }
  if (!file) {
    response.writeHead(404, { "content-type": "text/plain" }).end("There is no such page.");
    return;
  }
  response.writeHead(200, {
    "content-type": TYPES[extname(file)] ?? "application/octet-stream",
    "cache-control": file.includes("/assets/") ? "max-age=31536000, immutable" : "no-cache",
  });
  createReadStream(file).pipe(response);
});

const FIRST_PORT = 4173;
const wanted = Number(process.env.PORT ?? FIRST_PORT);
server.on("error", (error) => {
  if (error.code === "EADDRINUSE" && !process.env.PORT && server.tried < FIRST_PORT + 20)
    server.listen(++server.tried, "localhost");
  else throw error;
});
server.on("listening", () =>
  console.log(`Glintwright is at http://localhost:${server.address().port}/  (Ctrl+C ends it)`),
);

ensurePackages();
ensureBuilt();
server.tried = wanted;
server.listen(wanted, "localhost");
