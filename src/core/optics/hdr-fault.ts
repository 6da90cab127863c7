/** What can be wrong with a picture that is to be a light, as a code with its data; sentences are made of it in `src/words`. */
export interface HdrFaultData {
  "header-cut": object;
  "no-picture": object;
  encoding: { readonly found: string };
  "row-order": { readonly found: string };
  size: { readonly width: number; readonly height: number; readonly most: number };
  broken: object;
}
export type HdrFaultCode = keyof HdrFaultData;
export type HdrFault<C extends HdrFaultCode = HdrFaultCode> = {
  readonly [K in C]: { readonly code: K; readonly data: HdrFaultData[K] };
}[C];

/** Thrown for a file that isn't a Radiance picture or breaks off. The message is for a trace. */
export class HdrError extends Error {
  override readonly name = "HdrError";
  constructor(readonly fault: HdrFault) {
    super(fault.code);
  }
}
