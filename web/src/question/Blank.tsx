import type { ComponentChildren } from 'preact';

/** Names that tie a label, a unit, a remark and a problem to one control. */
export function blankIds(
  id: string,
  { unit, remark, problem }: { unit?: unknown; remark?: unknown; problem?: unknown },
) {
  return {
    id,
    'aria-labelledby': unit ? `${id}-label ${id}-unit` : `${id}-label`,
    'aria-describedby':
      [problem ? `${id}-problem` : '', remark ? `${id}-remark` : ''].filter(Boolean).join(' ') || undefined,
    'aria-invalid': problem ? ('true' as const) : undefined,
  };
}

interface BlankProps {
  readonly id: string;
  readonly label: ComponentChildren;
  /** Stands inside the frame, after the value. */
  readonly unit?: string;
  readonly remark?: ComponentChildren;
  readonly problem?: string | null;
  /** Words of the sentence that lead up to the blank. */
  readonly lead?: string;
  /** Controls on either side of the frame. */
  readonly before?: ComponentChildren;
  readonly after?: ComponentChildren;
  readonly children: ComponentChildren;
}

/** A blank of the sentence: label above, value and unit in one frame, remark or problem below. */
export function Blank({ id, label, unit, remark, problem, lead, before, after, children }: BlankProps) {
  return (
    <div class="blank" data-wrong={problem ? '' : undefined}>
      {lead !== undefined && (
        <span class="blank-lead" aria-hidden="true">
          {lead}
        </span>
      )}
      <div class="blank-body">
        <label class="blank-label" id={`${id}-label`} for={id}>
          {label}
        </label>
        <div class="blank-row">
          {before}
          <div class="frame">
            {children}
            {unit && (
              <span class="frame-unit" id={`${id}-unit`}>
                {unit}
              </span>
            )}
          </div>
          {after}
        </div>
        {problem && (
          <p class="blank-problem" id={`${id}-problem`}>
            {problem}
          </p>
        )}
        {remark && (
          <p class="blank-remark" id={`${id}-remark`}>
            {remark}
          </p>
        )}
      </div>
    </div>
  );
}
