/** For one step on a machine that has much else to do: what never comes is told late, what comes is never missed. */
export const PATIENCE_MS = 90_000;
