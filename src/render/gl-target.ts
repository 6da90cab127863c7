/** Textures that are drawn to. */

/** @param filter how it is read between its texels: as the nearest one has it, if it is read there at all */
export function makeTarget(
  gl: WebGL2RenderingContext,
  format: GLenum,
  width: number,
  height: number,
  filter: GLenum = gl.NEAREST,
): WebGLTexture {
  const texture = gl.createTexture();
  gl.bindTexture(gl.TEXTURE_2D, texture);
  gl.texStorage2D(gl.TEXTURE_2D, 1, format, width, height);
  for (const size of [gl.TEXTURE_MIN_FILTER, gl.TEXTURE_MAG_FILTER])
    gl.texParameteri(gl.TEXTURE_2D, size, filter);
  for (const wrap of [gl.TEXTURE_WRAP_S, gl.TEXTURE_WRAP_T])
    gl.texParameteri(gl.TEXTURE_2D, wrap, gl.CLAMP_TO_EDGE);
  return texture;
}

/**
 * What draws to one texture, or to several at once.
 * @throws Error when the device can't draw to floats (the device check has said so before)
 */
export function makeFramebuffer(
  gl: WebGL2RenderingContext,
  textures: readonly WebGLTexture[],
): WebGLFramebuffer {
  const framebuffer = gl.createFramebuffer();
  gl.bindFramebuffer(gl.FRAMEBUFFER, framebuffer);
  const places = textures.map((texture, k) => {
    const place = gl.COLOR_ATTACHMENT0 + k;
    gl.framebufferTexture2D(gl.FRAMEBUFFER, place, gl.TEXTURE_2D, texture, 0);
    return place;
  });
  if (places.length > 1) gl.drawBuffers(places);
  const complete = gl.checkFramebufferStatus(gl.FRAMEBUFFER) === gl.FRAMEBUFFER_COMPLETE;
  gl.bindFramebuffer(gl.FRAMEBUFFER, null);
  if (!complete && !gl.isContextLost()) throw new Error("the device can't draw to a float texture");
  return framebuffer;
}
