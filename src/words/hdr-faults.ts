/** What is wrong with a picture that is to be a light, in words. */
import type { HdrFault, HdrFaultCode, HdrFaultData } from "../core/optics/hdr-fault.ts";
import { hdrFaults as de } from "./de/hdr-faults.ts";
import { hdrFaults as en } from "./en/hdr-faults.ts";
import type { Language } from "./language.ts";

export type HdrFaultWords = { readonly [C in HdrFaultCode]: (data: HdrFaultData[C]) => string };

const WORDS: Readonly<Record<Language, HdrFaultWords>> = { en, de };

const said = <C extends HdrFaultCode>({ code, data }: HdrFault<C>, words: HdrFaultWords): string =>
  words[code](data);

export const hdrFaultInWords = (fault: HdrFault, language: Language): string => said(fault, WORDS[language]);
