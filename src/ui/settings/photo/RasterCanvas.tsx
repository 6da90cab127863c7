/** Pixels on the screen, as wide as there is room. */
import { useEffect, useRef } from "react";
import type { Raster } from "../../../core/optics/raster.ts";

export function RasterCanvas({ raster, label }: { raster: Raster; label: string }) {
  const ref = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const pixels = new ImageData(new Uint8ClampedArray(raster.rgba), raster.width, raster.height);
    ref.current?.getContext("2d")?.putImageData(pixels, 0, 0);
  }, [raster]);
  return <canvas ref={ref} width={raster.width} height={raster.height} role="img" aria-label={label} />;
}
