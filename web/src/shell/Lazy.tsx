import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { GoneNote } from '../answer/ProblemNote.tsx';

interface LazyProps {
  readonly load: () => Promise<ComponentType>;
}

/** Time before code that could not be fetched is asked for again. [ms] */
const RETRY_MS = 3000;

/** A place whose code is fetched when it is first gone to, again and again until it comes. */
export function Lazy({ load }: LazyProps) {
  const [place, setPlace] = useState<{ readonly Part: ComponentType } | null>(null);
  const [attempt, setAttempt] = useState(0);
  const again = () => setAttempt((before) => before + 1);
  useEffect(() => {
    let left = false;
    let timer: ReturnType<typeof setTimeout> | undefined;
    load().then(
      (Part) => !left && setPlace({ Part }),
      () => {
        if (!left) timer = setTimeout(again, attempt === 0 ? 0 : RETRY_MS);
      },
    );
    return () => {
      left = true;
      clearTimeout(timer);
    };
  }, [load, attempt]);
  if (place) return <place.Part />;
  if (attempt === 0) return null;
  return (
    <main class="lone">
      <h1 class="place-title">This part of the page has not come yet</h1>
      <GoneNote retry={again} />
    </main>
  );
}
