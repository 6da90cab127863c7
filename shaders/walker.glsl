// What a path carries on its way and has gathered, and when it ends. Twin: src/core/optics/walker.ts.

// The farthest that any path may be followed.
const int MOST_MEETINGS = 256;
// Paths weaker than this are ended by chance, the survivors made up for it.
const float ROULETTE_BELOW = 0.25;
// Paths that met a dark core are weak from there on, and all that is seen of it: they end as a white one's would, down to this.
const float LEAST_WHITENESS = 0.01;
// Surfaces that a path may meet. What is still inside then is light caught for ages between facets: it has been everywhere,
// and the mean of the light all around stands for where it would come from. No energy is lost or made.
uniform int reach;
// No bubble, no design, no grain.
const int NONE = -1;

// What whoever looks past the piece sees.
const int BEHIND_NOTHING = 0;
const int BEHIND_SOFT = 1;
const int BEHIND_LIGHT = 2;
uniform int behind;
// Unit direction of the view: with nothing behind the piece, light from the half-space ahead of it has no colour, and what is
// seen of it lets the page through.
uniform vec3 away;

#if RING
// Times that a ray is followed to the ring: what has been thrown back by it so often is no light any more.
const int RING_MEETINGS = 3;
// A ray that came by the ring sees light: what lies there is no page behind the piece.
bool isOfRing = false;
#else
const bool isOfRing = false;
#endif

bool isPage(vec3 d) {
  return behind == BEHIND_NOTHING && dot(d, away) > 0.0 && !isOfRing;
}

// What one path has gathered.
struct Gathered {
  // Radiance for its wavelength, or red, green and blue without dispersion.
  Amount byWave;
  // What needs no wavelength: a mirror image has a colour but no dispersion.
  vec3 mirror;
  // Share of the ray that sees the page behind the piece: for its wavelength, and in plain light.
  Amount page;
  float plainPage;
  // False when the ray passed by the piece: then no wavelength plays a part.
  bool isPiece;
};

struct Walker {
  vec3 p;
  vec3 d;
  Amount weight;
  // Share seen of the page.
  Amount page;
  // Design and grain just left.
  int design;
  int grain;
  // Bubble it is in.
  int bubble;
  // Seed of its evenly spread chances, and whether that of the first scattering is still to come.
  uint scramble;
  bool isScatterEven;
  // Decides whether it ends, the next time it is weak.
  float roulette;
  // What colours inside have left of a white path: weak is meant by that.
  float whiteness;
};

// Two directions that make a right-handed frame with n (Duff et al., JCGT 6(1), 2017).
mat3 frameOf(vec3 n) {
  float s = n.z >= 0.0 ? 1.0 : -1.0;
  float a = -1.0 / (s + n.z);
  float b = n.x * n.y * a;
  return mat3(vec3(1.0 + s * n.x * n.x * a, s * b, -s * n.x), vec3(b, s + n.y * n.y * a, -n.y), n);
}

// Fresnel for red, green and blue, each at its own mean index.
vec3 mirrorRgb(float cosI) {
  return vec3(
    fresnel(cosI, 1.0 / indexRgb.r),
    fresnel(cosI, 1.0 / indexRgb.g),
    fresnel(cosI, 1.0 / indexRgb.b)
  );
}

Amount gather(vec3 p, vec3 d, PathColour colour) {
  return colourFor(lightFrom(p, d), colour);
}

// This ray's place in an order of its own, so that whether it ends is not tied to its place in the pixel.
uniform uint rouletteIndex;

// The first chance is evenly spread over a pixel's samples: most weak paths are what one facet mirrors back inside, alike all
// over a facet.
float firstRoulette(uint scramble) {
  return radicalInverse(rouletteIndex, hash(scramble + 5u));
}

// Ends weak paths by chance without bias; true when it ended.
bool roulette(inout Walker w, inout uint random) {
  float survive = strongest(w.weight) / (ROULETTE_BELOW * w.whiteness);
  if (survive >= 1.0) return false;
  bool ends = w.roulette >= survive;
  w.roulette = nextRandom(random);
  w.weight /= survive;
  return ends;
}
