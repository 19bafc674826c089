import { Component, type ComponentChildren } from 'preact';

interface CaughtProps {
  /** The address shown; another one is tried anew. */
  readonly at: string;
  readonly children: ComponentChildren;
}

interface CaughtState {
  readonly at: string;
  readonly failed: boolean;
}

/**
 * Holds what goes wrong in drawing a place, so that the rest of the page stays: says so, and leads on. The fault itself
 * still reaches the browser’s log.
 */
export class Caught extends Component<CaughtProps, CaughtState> {
  override state = { at: this.props.at, failed: false };

  static override getDerivedStateFromProps({ at }: CaughtProps, state: CaughtState) {
    return at === state.at ? null : { at, failed: false };
  }

  static override getDerivedStateFromError() {
    return { failed: true };
  }

  override componentDidCatch(error: unknown) {
    console.error(error);
  }

  override render() {
    if (!this.state.failed) return this.props.children;
    return (
      <main class="lone" data-testid="caught">
        <h1 class="place-title">What this address asks cannot be shown</h1>
        <p>
          Something in it is not as the page expects; it stays in the address bar as it is. Mend it there, or{' '}
          <a href="/">begin from the question</a>. What was kept is not touched.
        </p>
      </main>
    );
  }
}
