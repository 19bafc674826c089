/** What stands beside every table of residuals or crops; never folded away. */
export function PlainCautions({ cautions }: { cautions: readonly string[] }) {
  return (
    <section class="cautions" aria-labelledby="cautions-title" data-testid="cautions">
      <h2 id="cautions-title">Before you act on this</h2>
      <ul>
        {cautions.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </section>
  );
}
