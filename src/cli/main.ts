/** The command line's beginning: answers the arguments that it was started with. */
import { commandLine } from "./command-line.ts";

// A stream's fault is told by the write that meets it; without somebody who listens it would come as a trace besides.
for (const stream of [process.stdout, process.stderr]) stream.on("error", () => {});

await commandLine(process.argv.slice(2));
