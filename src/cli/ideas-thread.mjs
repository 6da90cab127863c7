/** Starts an ideas thread: threads don't inherit the TypeScript loader, so it is registered here before the worker is loaded. */
import { register } from "tsx/esm/api";

register();
await import("./ideas-worker.ts");
