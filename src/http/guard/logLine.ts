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

/** Folders before the name of a file in a frame of a stack; they may hold a person's name. */
const FOLDERS = /(\(|^at (?:async )?)(?!node:)[^()]*[/\\]/;

/** What nobody foresaw: its kind and where it arose, without its message, which may hold what was asked or is kept. */
export function unforeseenLine(error: unknown): string {
  const { name, stack = '' } = error instanceof Error ? error : { name: typeof error };
  const frames = stack.split('\n').filter((line) => /^\s+at /.test(line));
  return logLine({
    level: 'error',
    event: 'unforeseen',
    kind: name,
    where: frames.map((line) => line.trim().replace(FOLDERS, '$1')).join(', '),
  });
}

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
