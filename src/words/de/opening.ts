/** The German words of what shows first, together: they travel by themselves, and only to where they are spoken. */
export { controls } from "./controls.ts";
export { drawings } from "./drawings.ts";
export { findings } from "./findings.ts";
export { history } from "./history.ts";
export { plan } from "./plan.ts";
export { rules } from "./rules.ts";
export { shell } from "./shell.ts";
export { verdict } from "./verdict.ts";
