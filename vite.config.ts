import { fileURLToPath } from "node:url";
import react from "@vitejs/plugin-react";
import { defineConfig, type Plugin } from "vite";
import { VitePWA } from "vite-plugin-pwa";
import { headersFile, PAGE_POLICY, REFERRER_POLICY } from "./src/cli/headers.ts";
import { bundleShow } from "./src/cli/show-bundle.ts";

const at = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** What the page may do, said in the page itself, and beside it for static hosts that take it from a file. */
const contentPolicy = (): Plugin => ({
  name: "content-policy",
  apply: "build",
  transformIndexHtml: () => [
    {
      tag: "meta",
      attrs: { "http-equiv": "Content-Security-Policy", content: PAGE_POLICY },
      injectTo: "head-prepend",
    },
    { tag: "meta", attrs: { name: "referrer", content: REFERRER_POLICY }, injectTo: "head" },
  ],
  generateBundle() {
    this.emitFile({ type: "asset", fileName: "_headers", source: headersFile() });
  },
});

/** Shaders travel without their comments and indents. Lines stay, so that a compiler's complaint still names them. */
const bareShaders = (): Plugin => ({
  name: "bare-shaders",
  apply: "build",
  transform: {
    filter: { id: /\.(glsl|frag|vert)\?raw$/ },
    handler(code) {
      const text = /^export default ("[\s\S]*");?\s*$/.exec(code)?.[1];
      if (text === undefined) throw new Error("a shader did not come as one text");
      const bare = (JSON.parse(text) as string).replace(/^[ \t]+|[ \t]*\/\/[^\n]*/gm, "");
      return { code: `export default ${JSON.stringify(bare)}`, map: null };
    },
  },
});

/**
 * What the page needs before its first words or its first picture is asked for by its head, not found out one by one: the
 * typeface, and, after everything else, the chunk that draws the piece.
 */
const openingPreloaded = (): Plugin => ({
  name: "opening-preloaded",
  apply: "build",
  transformIndexHtml: {
    order: "post",
    handler: (_html, { bundle }) => {
      const named = (what: string, isIt: (file: string, name: string | undefined) => boolean) => {
        const found = Object.values(bundle ?? {}).find((file) => isIt(file.fileName, file.name));
        if (!found) throw new Error(`the build has no ${what}`);
        return `./${found.fileName}`;
      };
      const face = named("typeface", (file) => /next-latin-wght-normal.*\.woff2$/.test(file));
      const canvas = named("chunk named canvas", (file, name) => name === "canvas" && file.endsWith(".js"));
      return [
        {
          tag: "link",
          attrs: { rel: "preload", as: "font", type: "font/woff2", crossorigin: true, href: face },
          injectTo: "head-prepend",
        },
        {
          tag: "link",
          attrs: { rel: "modulepreload", crossorigin: true, fetchpriority: "low", href: canvas },
          injectTo: "head",
        },
      ];
    },
  },
});

/** Script and style of a customer's page, for the app to put into the file that it makes. */
const showBundle = (): Plugin => {
  const name = "virtual:show-bundle";
  return {
    name: "show-bundle",
    resolveId: (id) => (id === name ? `\0${name}` : null),
    load: async (id) => {
      if (id !== `\0${name}`) return null;
      const { script, style } = await bundleShow(at("."));
      return `export const script = ${JSON.stringify(script)};\nexport const style = ${JSON.stringify(style)};`;
    },
  };
};

const installable = VitePWA({
  registerType: "prompt",
  injectRegister: null,
  manifest: {
    id: "glintwright",
    name: "Glintwright",
    short_name: "Glintwright",
    description: "Plan the facets to be ground into a glass marble, and take the plan to the bench.",
    start_url: "./",
    scope: "./",
    display: "standalone",
    background_color: "#f4f1ea",
    theme_color: "#f4f1ea",
    icons: [
      { src: "icon-192.png", sizes: "192x192", type: "image/png" },
      { src: "icon-512.png", sizes: "512x512", type: "image/png", purpose: "any" },
      { src: "icon-512.png", sizes: "512x512", type: "image/png", purpose: "maskable" },
      { src: "icon.svg", sizes: "any", type: "image/svg+xml" },
    ],
  },
  workbox: {
    globPatterns: ["**/*.{js,css,html,svg,png,woff2}"],
    maximumFileSizeToCacheInBytes: 8_000_000,
    cleanupOutdatedCaches: true,
    navigateFallback: "index.html",
  },
});

export default defineConfig({
  root: at("src"),
  base: "./",
  publicDir: at("public"),
  cacheDir: at(".cache/vite"),
  plugins: [react(), bareShaders(), showBundle(), contentPolicy(), openingPreloaded(), installable],
  server: { fs: { allow: [at(".")] } },
  // light-dark() and oklch() stay as written: the scene reads its colours from the same tokens.
  build: {
    outDir: at("dist"),
    emptyOutDir: true,
    target: "es2022",
    cssTarget: ["chrome123", "firefox120", "safari17.5"],
    // What the page opens on comes as one file: each file more costs a turn before anything shows. With it what the piece is drawn
    // by and Ideas reckons by, which would be a small file of its own.
    rolldownOptions: {
      output: {
        codeSplitting: { groups: [{ name: "opening", test: /src\/(main\.tsx|core\/measure\/caps\.ts)$/ }] },
      },
    },
  },
  worker: { format: "es" },
});
