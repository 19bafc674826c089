import { version } from '../../../package.json';

/** What stands beyond the places: how to use them, the computations behind them, the interface; and the version. */
export function Foot() {
  return (
    <footer class="foot">
      <nav aria-label="Beyond this page">
        <a href="/guide/index.html">Guide</a>
        <a href="/guide/glossary.html">Glossary</a>
        <a href="/notebooks/index.html">Notebooks</a>
        <a href="/api">Interface for programs</a>
      </nav>
      <p data-testid="version">Drywake {version}</p>
    </footer>
  );
}
