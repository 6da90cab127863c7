/** The server of `npm start`: a folder of files, to be read and nothing else. */
import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
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

function answer(folder: string, request: IncomingMessage, response: ServerResponse): void {
  const asked = request.headers["accept-language"]?.split(",") ?? [];
  const words = commandLineWords(languageOf(asked.map((tag) => tag.trim()))).server;
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

/** @param folder nothing outside it is ever served */
export const folderServer = (folder: string): Server =>
  createServer((request, response) => answer(folder, request, response));
