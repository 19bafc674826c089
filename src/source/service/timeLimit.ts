/** Ends what it watches over when a time is up or the user asks for it. */
export class TimeLimit {
  readonly reason = new Error('the time was up');
  /** Whether the head of an answer has come. */
  answered = false;
  private readonly stop = new AbortController();
  private readonly total: NodeJS.Timeout;
  private step: NodeJS.Timeout | undefined;
  private readonly over: Promise<never>;

  constructor(
    totalMs: number,
    private readonly outer: AbortSignal | undefined,
  ) {
    this.over = new Promise((_, reject) =>
      this.stop.signal.addEventListener('abort', () => reject(this.reason), { once: true }),
    );
    this.over.catch(() => undefined);
    this.total = setTimeout(this.end, totalMs, 'the time for this file was up');
    outer?.addEventListener('abort', this.end);
    if (outer?.aborted) this.stop.abort();
  }

  get signal(): AbortSignal {
    return this.stop.signal;
  }

  /** Starts the time for the next step anew. [ms] */
  next(ms: number, why: string): void {
    clearTimeout(this.step);
    this.step = setTimeout(this.end, ms, why);
  }

  /** The promise's result, unless the time is up before. */
  within<T>(promise: Promise<T>): Promise<T> {
    return Promise.race([promise, this.over]);
  }

  readonly end = (why?: unknown): void => {
    if (typeof why === 'string') this.reason.message = why;
    clearTimeout(this.total);
    clearTimeout(this.step);
    this.outer?.removeEventListener('abort', this.end);
    this.stop.abort(this.reason);
  };
}
