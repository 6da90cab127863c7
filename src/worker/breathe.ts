/** Yields to the event loop: waits until messages that have come in are delivered: a promise alone would not, a timer would wait 4 ms more each time. */
export const breathe = (): Promise<void> =>
  new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
