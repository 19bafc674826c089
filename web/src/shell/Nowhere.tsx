import { useEffect } from 'preact/hooks';

/** An address that leads to no place. */
export function Nowhere({ path }: { path: string }) {
  useEffect(() => {
    document.title = 'Nothing here · Drywake';
  }, []);
  return (
    <main class="lone">
      <h1 class="place-title">There is nothing at {path}</h1>
      <p>
        Go to <a href="/">the field</a>, <a href="/weather">the weather records</a> or{' '}
        <a href="/catalogue">the catalogue</a>.
      </p>
    </main>
  );
}
