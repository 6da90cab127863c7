import { type FileFault, pathText } from "./file-fault.ts";

/** A plan that can't be read. The message is for a trace; whoever tells a person makes a sentence of `fault`. */
export class PlanFileError extends Error {
  override readonly name = "PlanFileError";
  constructor(readonly fault: FileFault) {
    super(fault.path ? `${pathText(fault.path)}: ${fault.code}` : fault.code);
  }
}
