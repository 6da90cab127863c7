/** What is wrong with a picture that is to be a light. */
import type { HdrFaultWords } from "../hdr-faults.ts";

export const hdrFaults: HdrFaultWords = {
  "header-cut": () => "the .hdr picture ends within its header",
  "no-picture": () => "the light is not a Radiance .hdr picture (its first line must begin with #?)",
  encoding: ({ found }) => `the .hdr picture is in ${found}, only 32-bit_rle_rgbe is read`,
  "row-order": ({ found }) =>
    `the .hdr picture must have its rows from the top (-Y height +X width), not "${found}"`,
  size: ({ width, height, most }) =>
    `the .hdr picture is ${width} by ${height} pixels; 1 to ${most} pixels are read`,
  broken: () => "the .hdr picture ends too early or has a broken scanline",
};
