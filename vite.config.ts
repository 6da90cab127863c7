import { fileURLToPath } from "node:url";
import react from "@vitejs/plugin-react";
import type { Plugin } from "vite";
import { VitePWA } from "vite-plugin-pwa";
import { defineConfig } from "vitest/config";

const at = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/**
 * What the page may do, said in the page itself so that it holds wherever the files are served: nothing leaves the origin,
 * no script but the built files. Styles set by React on elements need 'unsafe-inline' for styles only.
 */
const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self' blob: data:",
  "worker-src 'self' blob:",
  "frame-src 'self' blob:",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "object-src 'none'",
].join("; ");

const contentPolicy = (): Plugin => ({
  name: "content-policy",
  apply: "build",
  transformIndexHtml: () => [
    {
      tag: "meta",
      attrs: { "http-equiv": "Content-Security-Policy", content: POLICY },
      injectTo: "head-prepend",
    },
  ],
});

/** The chunk that draws the piece is asked for by the shell: it is fetched and compiled beside it, and run when the shell stands. */
const stagePreloaded = (): Plugin => ({
  name: "stage-preloaded",
  apply: "build",
  transformIndexHtml: {
    order: "post",
    handler: (_html, { bundle }) => {
      const stage = Object.values(bundle ?? {}).find(
        (file) => file.type === "chunk" && file.name === "stage",
      );
      if (!stage) throw new Error("the build has no chunk named stage");
      return [
        {
          tag: "link",
          attrs: { rel: "modulepreload", crossorigin: true, href: `./${stage.fileName}` },
          injectTo: "head",
        },
      ];
    },
  },
});

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
  plugins: [react(), contentPolicy(), stagePreloaded(), installable],
  server: { fs: { allow: [at(".")] } },
  // light-dark() and oklch() stay as written: the scene reads its colours from the same tokens.
  build: {
    outDir: at("dist"),
    emptyOutDir: true,
    target: "es2022",
    cssTarget: ["chrome123", "firefox120", "safari17.5"],
  },
  worker: { format: "es" },
  test: {
    root: at("."),
    include: ["tests/**/*.test.{ts,tsx}"],
    exclude: ["tests/browser/**", "tests/bench/**"],
    environment: "node",
    testTimeout: 60_000,
    // its modules name each other without endings, which Node alone does not resolve
    server: { deps: { inline: ["quickhull3d"] } },
  },
});
