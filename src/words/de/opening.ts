/** The German words of what shows first, together: they travel by themselves, and only to where they are spoken. */
export { controls } from "./controls.ts";
export { drawings } from "./drawings.ts";
export { examples } from "./examples.ts";
export { fileFaults } from "./file-faults.ts";
export { history } from "./history.ts";
export { plan } from "./plan.ts";
export { shell } from "./shell.ts";
