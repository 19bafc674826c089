import type { MiddlewareHandler } from 'hono';
import { bodyLimit } from 'hono/body-limit';

export const IMPORT_PATH = '/api/weather/import';

/** Largest body of each address [bytes], the first that fits; null where the route has a limit of its own. */
const LIMITS: readonly (readonly [RegExp, number | null])[] = [
  [new RegExp(`^${IMPORT_PATH}$`), null],
  [/^\/api\/restore$/, 128 * 1024 * 1024],
  [/^\/api\/(batch|fields\.csv|labels\.csv)$/, 16 * 1024 * 1024],
  [/^\/api\/fields\//, 1024 * 1024],
  [/^\//, 64 * 1024],
];

/** Refuses bodies that are larger than their address takes. */
export function bodyLimits(): MiddlewareHandler {
  const limits = LIMITS.map(
    ([path, most]) => [path, most === null ? null : bodyLimit({ maxSize: most })] as const,
  );
  return (context, next) => {
    const limit = limits.find(([path]) => path.test(context.req.path))?.[1] ?? null;
    return limit === null ? next() : limit(context, next);
  };
}
