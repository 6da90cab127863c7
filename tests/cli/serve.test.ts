/** The server answers what is asked of it over a plain socket, badly or not, lets nothing out of its folder and keeps nothing open. */
import { once } from "node:events";
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readlinkSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from "node:fs";
import { type AddressInfo, connect } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { HEADERS } from "../../src/cli/headers.ts";
import { folderServer } from "../../src/cli/serve.ts";

const home = mkdtempSync(join(tmpdir(), "glintwright-serve-"));
const folder = join(home, "dist");
mkdirSync(join(folder, "assets"), { recursive: true });
writeFileSync(join(home, "secret.txt"), "not for the page");
writeFileSync(join(home, "dist-secret.txt"), "not for the page");
writeFileSync(join(folder, "index.html"), "<p>the page</p>");
writeFileSync(join(folder, ".hidden"), "hidden");
writeFileSync(join(folder, "manifest.webmanifest"), "{}");
writeFileSync(join(folder, "assets/a-1.js"), "export {};");
writeFileSync(join(folder, "assets/face.woff2"), "");
const LARGE = join(folder, "assets/large.js");
writeFileSync(LARGE, "");
truncateSync(LARGE, 200_000_000);

const server = folderServer(folder);
beforeAll(async () => {
  server.listen(0, "localhost");
  await once(server, "listening");
});
afterAll(() => {
  server.closeAllConnections();
  server.close();
  rmSync(home, { recursive: true });
});

const port = () => (server.address() as AddressInfo).port;

interface Answer {
  readonly status: number;
  readonly headers: ReadonlyMap<string, string>;
  readonly body: string;
}

const ask = (method: string, target: string, more = ""): Promise<Answer> =>
  send(`${method} ${target} HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n${more}\r\n`);

/** Sends bytes as written, and reads to the end. @param isAll whether this half of the connection is closed behind them */
async function send(request: string, isAll = false): Promise<Answer> {
  const socket = connect({ port: port(), host: "localhost", allowHalfOpen: true });
  if (isAll) socket.end(request);
  else socket.write(request);
  socket.once("end", () => socket.end());
  let text = "";
  socket.on("data", (bytes) => (text += bytes.toString("latin1")));
  await once(socket, "close");
  const [head, ...rest] = text.split("\r\n\r\n");
  const [first, ...lines] = head.split("\r\n");
  const headers = new Map(
    lines.map((line) => [line.slice(0, line.indexOf(":")).toLowerCase(), line.slice(line.indexOf(":") + 2)]),
  );
  return { status: Number(first.split(" ")[1]), headers, body: rest.join("\r\n\r\n") };
}

function expectHeaders({ headers }: Answer, said: string): void {
  for (const [name, value] of Object.entries(HEADERS))
    expect(headers.get(name.toLowerCase()), said).toBe(value);
}

it("serves the page and its files with what they are and how long they hold", async () => {
  const page = await ask("GET", "/");
  expect([page.status, page.body]).toEqual([200, "<p>the page</p>"]);
  expect(page.headers.get("content-type")).toBe("text/html; charset=utf-8");
  expect(page.headers.get("cache-control")).toBe("no-cache");
  expectHeaders(page, "page");
  for (const [path, type] of [
    ["/assets/a-1.js?v=2", /^(text|application)\/javascript/],
    ["/assets/face.woff2", /^font\/woff2$/],
    ["/manifest.webmanifest", /^application\/manifest\+json/],
  ] as const) {
    const file = await ask("GET", path);
    expect(file.status, path).toBe(200);
    expect(file.headers.get("content-type"), path).toMatch(type);
    expectHeaders(file, path);
  }
  expect((await ask("GET", "/assets/a-1.js")).headers.get("cache-control")).toMatch(/immutable/);
});

it("says with every answer that nobody may frame the page, guess a file's kind or hear whence one came", () => {
  expect(HEADERS["Content-Security-Policy"]).toMatch(/^default-src 'none'; .*; frame-ancestors 'none'$/);
  expect(HEADERS["Content-Security-Policy"]).not.toMatch(
    /https?:|(?<!wasm-)unsafe-eval|script-src[^;]*unsafe-inline|\*/,
  );
  expect(HEADERS).toMatchObject({ "X-Content-Type-Options": "nosniff", "Referrer-Policy": "no-referrer" });
});

it("answers HEAD as GET without a body", async () => {
  const [head, get] = [await ask("HEAD", "/"), await ask("GET", "/")];
  expect([head.status, head.body]).toEqual([200, ""]);
  expect(head.headers.get("content-length")).toBe(get.headers.get("content-length"));
});

describe("what it does not do", () => {
  it.each(["POST", "PUT", "DELETE", "TRACE", "PATCH", "OPTIONS", "PROPFIND"])(
    "refuses %s, and says what it takes",
    async (method) => {
      const answer = await ask(method, "/");
      expect(answer.status).toBe(405);
      expect(answer.headers.get("allow")).toBe("GET, HEAD");
      expectHeaders(answer, method);
    },
  );

  it.each([
    ["//", 200],
    ["///", 200],
    ["http://elsewhere/", 200],
    ["//elsewhere/..", 404],
    ["/nowhere", 404],
    ["/assets", 404],
    ["/assets/", 404],
    ["/assets/nowhere.js", 404],
    ["/.hidden", 404],
    ["/../secret.txt", 403],
    ["/..%2fsecret.txt", 403],
    ["/%2e%2e/secret.txt", 403],
    ["/../dist-secret.txt", 403],
    ["/%", 400],
    ["/%00", 400],
    ["/a%ff", 400],
    ["http://[", 200],
  ])("answers %s with %i and lives on", async (target, status) => {
    const answer = await ask("GET", target);
    expect(answer.status).toBe(status);
    expect(answer.body).not.toContain("not for the page");
    if (status !== 200) expect(answer.headers.get("cache-control") ?? "").not.toMatch(/immutable/);
    expectHeaders(answer, target);
    expect((await ask("GET", "/")).status).toBe(200);
  });

  it.each([
    ["what is no request at all", "nonsense\r\n\r\n", 400],
    ["a header without a name", "GET / HTTP/1.1\r\nHost: localhost\r\n: nothing\r\n\r\n", 400],
    ["two lengths", "GET / HTTP/1.1\r\nHost: a\r\nContent-Length: 1\r\nContent-Length: 2\r\n\r\n", 400],
    ["a header without an end", `GET / HTTP/1.1\r\nHost: localhost\r\nX: ${"x".repeat(40_000)}`, 431],
    ["a tunnel", "CONNECT localhost:80 HTTP/1.1\r\nHost: localhost\r\n\r\n", 405],
  ])("refuses %s with the headers of every answer, and lives on", async (said, request, status) => {
    for (const isAll of [false, true]) {
      const answer = await send(request, isAll);
      expect(answer.status).toBe(status);
      expect(answer.headers.get("connection")).toBe("close");
      expect(Number(answer.headers.get("content-length"))).toBe(answer.body.length);
      expectHeaders(answer, said);
    }
    expect((await ask("GET", "/")).status).toBe(200);
  });
});

it.each([
  ["without a host", "GET / HTTP/1.1\r\nConnection: close\r\n\r\n"],
  ["of the older kind", "GET / HTTP/1.0\r\n\r\n"],
  ["that expects something", "GET / HTTP/1.1\r\nHost: a\r\nConnection: close\r\nExpect: a cake\r\n\r\n"],
])("answers a request %s", async (said, request) => {
  const answer = await send(request);
  expect([answer.status, answer.body]).toEqual([200, "<p>the page</p>"]);
  expectHeaders(answer, said);
});

it("answers in full who closes the asking half of the connection", async () => {
  const path = "assets/half.js";
  writeFileSync(join(folder, path), "x".repeat(1_000_000));
  for (const more of ["", "Connection: close\r\n"]) {
    const answer = await send(`GET /${path} HTTP/1.1\r\nHost: localhost\r\n${more}\r\n`, true);
    expect([answer.status, answer.body.length]).toEqual([200, 1_000_000]);
    expectHeaders(answer, path);
  }
});

/** How often this process, which is the server's, has the large file open. */
const timesOpen = () =>
  readdirSync("/proc/self/fd").filter((fd) => {
    try {
      return readlinkSync(`/proc/self/fd/${fd}`) === LARGE;
    } catch {
      // closed between the two looks
      return false;
    }
  }).length;

it("closes the file of a download that was broken off", async () => {
  for (let i = 0; i < 12; i++) {
    const socket = connect(port(), "localhost");
    socket.write("GET /assets/large.js HTTP/1.1\r\nHost: localhost\r\n\r\n");
    await once(socket, "data");
    expect(timesOpen()).toBeGreaterThan(0);
    socket.destroy();
  }
  await expect.poll(timesOpen, { timeout: 10_000 }).toBe(0);
});
