/**
 * How long the graphics card takes for a frame's work, without ever waiting for it: a fence is put behind the commands
 * and looked at from a short timer. The time is right to about four milliseconds, which is what browsers let timers do.
 */
const POLL_MS = 1;

/** Resolves with the milliseconds the card took for all commands given so far; 0 when the context is lost meanwhile. */
export function measureGpu(gl: WebGL2RenderingContext): Promise<number> {
  const started = performance.now();
  const fence = gl.fenceSync(gl.SYNC_GPU_COMMANDS_COMPLETE, 0);
  gl.flush();
  return new Promise((resolve) => {
    const look = () => {
      if (!fence || gl.isContextLost()) return resolve(0);
      if (gl.getSyncParameter(fence, gl.SYNC_STATUS) !== gl.SIGNALED) return setTimeout(look, POLL_MS);
      gl.deleteSync(fence);
      return resolve(performance.now() - started);
    };
    setTimeout(look, POLL_MS);
  });
}
