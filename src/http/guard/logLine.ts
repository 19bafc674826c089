import type { MiddlewareHandler } from 'hono';
import { routePath } from 'hono/route';

/** One line of the server's log: JSON, and nothing of what was asked or by whom. */
export interface LogLine {
  readonly level: 'info' | 'error';
  /** What happened: `request`, or the code of the refusal. */
  readonly event: string;
  readonly [fact: string]: string | number | undefined;
}

export const logLine = (line: LogLine): string => JSON.stringify(line);

/** What nobody foresaw, with its reason. */
export const unforeseenLine = (error: unknown): string =>
  logLine({
    level: 'error',
    event: 'unforeseen',
    reason: error instanceof Error ? (error.stack ?? error.message) : String(error),
  });

/** Logs each request by its route, never by its address, which holds a question. */
export const requestLog =
  (log: (line: string) => void): MiddlewareHandler =>
  async (context, next) => {
    const start = performance.now();
    await next();
    log(
      logLine({
        level: 'info',
        event: 'request',
        method: context.req.method,
        route: routePath(context, -1),
        status: context.res.status,
        ms: Math.round(performance.now() - start),
      }),
    );
  };
