/** The size in which a picture may be drawn, in CSS pixels; zero before it is laid out. */
import { type RefObject, useLayoutEffect, useRef, useState } from "react";

export interface Box {
  readonly width: number;
  readonly height: number;
}

export function useBox<E extends Element>(): readonly [RefObject<E | null>, Box] {
  const ref = useRef<E>(null);
  const [box, setBox] = useState<Box>({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    const measure = () => {
      const { width, height } = element.getBoundingClientRect();
      setBox((old) => (old.width === width && old.height === height ? old : { width, height }));
    };
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    measure();
    return () => observer.disconnect();
  }, []);
  return [ref, box];
}
