import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';

interface LazyProps {
  readonly load: () => Promise<ComponentType>;
}

/** A place whose code is fetched when it is first gone to. */
export function Lazy({ load }: LazyProps) {
  const [place, setPlace] = useState<{ readonly Part: ComponentType } | null>(null);
  const [failed, setFailed] = useState(false);
  useEffect(() => {
    let left = false;
    load().then(
      (Part) => !left && setPlace({ Part }),
      () => !left && setFailed(true),
    );
    return () => {
      left = true;
    };
  }, [load]);
  if (place) return <place.Part />;
  if (!failed) return null;
  return (
    <main class="lone">
      <h1 class="place-title">This part of the page could not be fetched</h1>
      <p>See whether the program still runs, then load the page again.</p>
    </main>
  );
}
