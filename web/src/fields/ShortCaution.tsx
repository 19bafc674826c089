/** What must be known beside odds that stand without their whole answer. */
export function ShortCaution() {
  return (
    <p class="small" data-testid="short-caution">
      Odds are a model’s estimate, not a promise; the reasons and all cautions stand in the whole answer. The
      label is the law and the floor.
    </p>
  );
}
