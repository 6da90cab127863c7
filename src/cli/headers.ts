/**
 * What the page may do and how its files are to be taken, said in one place: in the page itself, by our own server, and in the
 * file `_headers` that static hosts read.
 */

/**
 * Nothing leaves the origin, no script but the built files, and no text that becomes script: 'wasm-unsafe-eval' lets those files compile
 * WebAssembly and nothing else (CSP Level 3, 2.3.1), which the kernel of rays needs. Styles set by React on elements need 'unsafe-inline' for styles only.
 * This much holds wherever the files are served, for it stands in the page.
 */
export const PAGE_POLICY = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "media-src 'self' blob:",
  "font-src 'self'",
  "connect-src 'self' blob: data:",
  "worker-src 'self' blob:",
  "frame-src 'self' blob:",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "object-src 'none'",
].join("; ");

export const REFERRER_POLICY = "no-referrer";

/** With every answer. Who may frame the page can only be said here: in the page itself it has no effect (CSP Level 3, 6.4.2). */
export const HEADERS: Readonly<Record<string, string>> = {
  "Content-Security-Policy": `${PAGE_POLICY}; frame-ancestors 'none'`,
  "X-Content-Type-Options": "nosniff",
  "Referrer-Policy": REFERRER_POLICY,
};

/** Files under it have their content's hash in their names. */
const HASHED = "/assets/";
const FOR_EVER = "public, max-age=31536000, immutable";
const ASK_AGAIN = "no-cache";

export const cachingOf = (path: string): string => (path.startsWith(HASHED) ? FOR_EVER : ASK_AGAIN);

/** The same for static hosts: a path a block, its headers indented below it. */
export function headersFile(): string {
  const everywhere = Object.entries(HEADERS).map(([name, value]) => `  ${name}: ${value}`);
  return ["/*", ...everywhere, `${HASHED}*`, `  Cache-Control: ${FOR_EVER}`, ""].join("\n");
}
