/** Words of the photograph of one's own marble. */
export const photo = {
  title: "Your own marble inside",
  intro:
    "A photograph of the uncut ball, straight from the front, becomes what is inside: each place gets the colour that the camera saw there through the round glass. It stays on this device and in the plan's file.",
  choose: "Choose a photograph",
  other: "Choose another photograph",
  unreadable: (name: string) =>
    `${name} can't be read as a picture. PNG, JPEG and what else this browser shows can.`,
  looking: "Looking for the ball ...",
  none: "No round outline was found. Set the circle on the ball's edge yourself.",
  tooSmall: (pixels: number) =>
    `The ball is only ${pixels} pixels across: too small for a picture of it. Come closer, or set the circle yourself.`,
  cutOff: "Part of the ball lies beyond the photograph: what isn't seen stays clear.",
  circle: "The ball's outline: move the circle, its handle sets its size",
  across: "Middle, from the left",
  down: "Middle, from the top",
  radius: "Radius",
  distance: "Camera from the ball",
  distanceHint: "From lens to the ball's middle. Unknown: ten times the ball's radius is near enough.",
  side: "Taken from",
  front: "the front",
  back: "the back",
  shape: "What was photographed lies",
  disc: "flat, in one layer",
  core: "on a ball in the middle",
  depth: "Toward the front",
  patch: "Take out the lamp's mirror",
  patched: (share: string) =>
    `${share} of the face was a lamp's mirror: filled from around it, outlined here.`,
  patchedNone: "No mirror of a lamp was found.",
  photograph: "Photograph",
  traced: "Traced with it inside",
  tracing: "Tracing ...",
  put: "Put it inside",
  isInside: "It is inside now.",
  full: (why: string) => `The plan can't take it: ${why}`,
} as const;
