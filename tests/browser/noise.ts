/** Text that no packing makes shorter, the same with every run. */
export function noise(characters: number): string {
  let seed = 7;
  return Array.from({ length: characters }, () => {
    seed = (seed * 1103515245 + 12345) % 2 ** 31;
    return String.fromCharCode(40 + Math.floor((seed / 2 ** 31) * 80));
  }).join("");
}
