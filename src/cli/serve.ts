/** The server of `npm start`: a folder of files, to be read and nothing else. */
import {
  createServer,
  type IncomingMessage,
  type Server,
  type ServerResponse,
  STATUS_CODES,
} from "node:http";
import type { Duplex } from "node:stream";
import send from "send";
import { commandLineWords } from "../words/command-line.ts";
import { languageOf } from "../words/language.ts";
import { cachingOf, HEADERS } from "./headers.ts";

const METHODS = ["GET", "HEAD"];

function refuse(response: ServerResponse, status: number, words: string): void {
  response.writeHead(status, { "Content-Type": "text/plain; charset=utf-8" }).end(`${words}\n`);
}

/** A request's path, still encoded, without host and question; never two slashes first, which would name a host. */
const pathOf = ({ url = "/" }: IncomingMessage): string =>
  url
    .replace(/[?#].*$/, "")
    .replace(/^https?:\/\/[^/]*/i, "")
    .replace(/^\/*/, "/");

/** In the language that the request asks for. */
function wordsFor({ headers }: IncomingMessage) {
  const asked = headers["accept-language"]?.split(",") ?? [];
  return commandLineWords(languageOf(asked.map((tag) => tag.trim()))).server;
}

function answer(folder: string, request: IncomingMessage, response: ServerResponse): void {
  const words = wordsFor(request);
  for (const [name, value] of Object.entries(HEADERS)) response.setHeader(name, value);
  if (!METHODS.includes(request.method ?? "")) {
    response.setHeader("Allow", METHODS.join(", "));
    refuse(response, 405, words.onlyRead);
    return;
  }
  const path = pathOf(request);
  const missing = (status: number, why: string) => {
    response.removeHeader("Cache-Control");
    refuse(response, status, why);
  };
  response.setHeader("Cache-Control", cachingOf(path));
  send(request, path, { root: folder })
    .on("directory", () => missing(404, words.noPage))
    .on("error", ({ status }: { readonly status: number }) => {
      if (response.headersSent) response.destroy();
      else missing(status, status === 404 ? words.noPage : words.noAnswer);
    })
    .pipe(response);
}

/** What Node's own parser gives up on, and how that is called (RFC 9110, 15.5; RFC 6585, 5). All else is a bad request. */
const UNREADABLE: Readonly<Record<string, number>> = {
  HPE_HEADER_OVERFLOW: 431,
  HPE_CHUNK_EXTENSIONS_OVERFLOW: 413,
  ERR_HTTP_REQUEST_TIMEOUT: 408,
};

/** Answers on a bare socket what never came to be a request, and ends the connection. */
function refuseOn(
  socket: Duplex,
  status: number,
  words: string,
  more: Readonly<Record<string, string>> = {},
) {
  // an answer that has begun would only be torn by another one
  const isAnswering = (socket as { _httpMessage?: ServerResponse | null })._httpMessage?.headersSent ?? false;
  if (!socket.writable || isAnswering) {
    socket.destroy();
    return;
  }
  const headers = {
    ...HEADERS,
    ...more,
    "Content-Type": "text/plain; charset=utf-8",
    "Content-Length": String(Buffer.byteLength(`${words}\n`)),
    Connection: "close",
  };
  const lines = Object.entries(headers).map(([name, value]) => `${name}: ${value}\r\n`);
  socket.end(`HTTP/1.1 ${status} ${STATUS_CODES[status]}\r\n${lines.join("")}\r\n${words}\n`);
}

/** @param folder nothing outside it is ever served */
export function folderServer(folder: string): Server {
  const respond = (request: IncomingMessage, response: ServerResponse): void =>
    answer(folder, request, response);
  // a request without a host gets the file it asks for: what Node would say of it itself has none of the headers
  const server = createServer({ requireHostHeader: false }, respond)
    .on("checkExpectation", respond)
    .on("connect", (request, socket) =>
      refuseOn(socket, 405, wordsFor(request).onlyRead, { Allow: METHODS.join(", ") }),
    )
    .on("clientError", (error: NodeJS.ErrnoException, socket) =>
      // it never came to say its language
      refuseOn(socket, UNREADABLE[error.code ?? ""] ?? 400, commandLineWords("en").server.noRequest),
    );
  // who has said all and closed this half of the connection still hears the answer
  return Object.assign(server, { httpAllowHalfOpen: true });
}
