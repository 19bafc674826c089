/** What stands where the first answer will be. */
export function Skeleton() {
  return (
    <div class="skeleton" data-testid="loading">
      <p class="sentence">
        Reading the weather record and counting the years in which this residual would still be there…
      </p>
      <p class="advice">The answer comes first, then the dates, the years and the reasons.</p>
    </div>
  );
}
