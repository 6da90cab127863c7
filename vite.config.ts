import { fileURLToPath } from "node:url";
import react from "@vitejs/plugin-react";
import { defineConfig } from "vitest/config";

const at = (path: string) => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  root: at("src"),
  base: "./",
  publicDir: at("public"),
  cacheDir: at(".cache/vite"),
  plugins: [react()],
  server: { fs: { allow: [at(".")] } },
  build: { outDir: at("dist"), emptyOutDir: true, target: "es2022" },
  worker: { format: "es" },
  test: {
    root: at("."),
    include: ["tests/**/*.test.{ts,tsx}"],
    exclude: ["tests/browser/**", "tests/bench/**"],
    environment: "node",
    testTimeout: 60_000,
  },
});
