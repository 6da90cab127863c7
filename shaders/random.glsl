// Repeatable chance in 32-bit integers: the very numbers of src/core/optics/random.ts. 0 <= u < 1 in steps of 2^-24.

float toUnit(uint x) {
  return float(x >> 8) * (1.0 / 16777216.0);
}

// PCG-RXS-M-XS-32 as a hash (Jarzynski and Olano, Hash Functions for GPU Rendering, JCGT 9(3), 2020).
uint hash(uint x) {
  uint state = x * 747796405u + 2891336453u;
  uint word = ((state >> ((state >> 28) + 4u)) ^ state) * 277803737u;
  return (word >> 22) ^ word;
}

// The stream of one path, from its pixel, its sample and the picture's seed.
uint streamOf(uint pixel, uint sampleNumber, uint seed) {
  return hash(hash(hash(seed) + pixel) + sampleNumber);
}

// Next number of the stream; `state` is its whole memory.
float nextRandom(inout uint state) {
  state = state * 747796405u + 2891336453u;
  uint word = ((state >> ((state >> 28) + 4u)) ^ state) * 277803737u;
  return toUnit((word >> 22) ^ word);
}

uint reverseBits(uint x) {
  x = ((x >> 1) & 0x55555555u) | ((x & 0x55555555u) << 1);
  x = ((x >> 2) & 0x33333333u) | ((x & 0x33333333u) << 2);
  x = ((x >> 4) & 0x0f0f0f0fu) | ((x & 0x0f0f0f0fu) << 4);
  x = ((x >> 8) & 0x00ff00ffu) | ((x & 0x00ff00ffu) << 8);
  return (x >> 16) | (x << 16);
}

// Owen scrambling by a hash in which every bit depends on the lower bits only (Laine and Karras 2011; Burley 2020).
// Takes and gives bit-reversed integers, so that no bits need turning between two steps.
uint owenScrambleReversed(uint v, uint seed) {
  v += seed;
  v ^= v * 0x6c50b47cu;
  v ^= v * 0xb82f1e52u;
  v ^= v * 0xc7afe638u;
  v ^= v * 0x8d22f6e6u;
  return v;
}

// Owen-scrambled van der Corput sequence: any 2^k numbers in a row fill 0 .. 1 evenly.
float radicalInverse(uint index, uint seed) {
  return toUnit(reverseBits(owenScrambleReversed(index, seed)));
}

// Point `index` of Sobol's (0,2)-sequence, Owen-scrambled by `seed`: any 2^k points in a row fill the square evenly.
// `second` is the bit-reversed second Sobol number of the index; it is the same for all pixels, so it comes from outside.
vec2 sobolPoint(uint index, uint second, uint seed) {
  return vec2(radicalInverse(index, hash(seed)), radicalInverse(second, hash(seed + 1u)));
}
