/** Words about handing a file to the device's own programs. */
export const send = {
  send: "Send it",
  notSent: (why: string) => `It could not be sent: ${why}`,
} as const;
