import { useLayoutEffect, useRef, useState } from 'preact/hooks';

/** Width of an element, kept up to date; 0 until it is known. [px] */
export function useWidth<T extends HTMLElement>() {
  const element = useRef<T>(null);
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const watched = element.current;
    if (watched === null) return;
    // On paper the element may have no box of its own; the last width then stands.
    const measure = () => watched.clientWidth > 0 && setWidth(Math.floor(watched.clientWidth));
    const observer = new ResizeObserver(measure);
    measure();
    observer.observe(watched);
    return () => observer.disconnect();
  }, []);
  return { element, width };
}
