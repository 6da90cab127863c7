/** Letting go of a callback that the page lent to a worker. */
import { type ProxyMethods, releaseProxy } from "comlink";

/**
 * Disposes of a proxied callback (comlink's `releaseProxy`): ends the message port behind a callback that came through comlink. Without it the page keeps the port for good, and
 * with it all that the callback knows: whole plans and parts of the page. A plain function is left as it is.
 */
export function letGo(callback: object): void {
  (callback as Partial<ProxyMethods>)[releaseProxy]?.();
}
