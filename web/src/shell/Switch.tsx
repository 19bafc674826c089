import type { ComponentChildren } from 'preact';

interface SwitchProps<Choice extends string> {
  /** What is chosen, for those who do not see the buttons side by side. */
  readonly legend: string;
  readonly choices: readonly Choice[];
  readonly chosen: Choice;
  readonly choose: (choice: Choice) => void;
  readonly children: (choice: Choice) => ComponentChildren;
  readonly look?: 'switch' | 'years-switch' | 'measures';
  /** A button's test id is this and its choice. */
  readonly testId?: string;
}

/** A few choices side by side, of which one holds. */
export function Switch<Choice extends string>(props: SwitchProps<Choice>) {
  const { legend, choices, chosen, choose, children, look = 'switch', testId } = props;
  return (
    <fieldset class={look}>
      <legend class="unseen">{legend}</legend>
      {choices.map((choice) => (
        <button
          key={choice}
          type="button"
          aria-pressed={choice === chosen}
          data-testid={testId && `${testId}-${choice}`}
          onClick={() => choose(choice)}
        >
          {children(choice)}
        </button>
      ))}
    </fieldset>
  );
}
