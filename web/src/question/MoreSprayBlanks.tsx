import { HalfLifeBlank, LeavesBlanks, OverlapBlank, RateGramsBlank } from './sprayBlanks.tsx';

/**
 * What a question can say about the spraying beyond product, date and rate.
 * @param ofOne whether it is about one residual, which may have a half-life of its own
 */
export function MoreSprayBlanks({ ofOne = true }: { ofOne?: boolean }) {
  return (
    <div class="blank-list">
      <OverlapBlank />
      <LeavesBlanks />
      {ofOne && (
        <>
          <RateGramsBlank />
          <HalfLifeBlank />
        </>
      )}
    </div>
  );
}
