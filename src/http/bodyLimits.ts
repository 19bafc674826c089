import type { MiddlewareHandler } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { isTooDense } from '../app/boundedJson.ts';
import { InvalidInputError } from '../errors.ts';

export const IMPORT_PATH = '/api/weather/import';
const RESTORE_PATH = '/api/restore';

/** Largest body of each address [bytes], the first that fits; null where the route has a limit of its own. */
const LIMITS: readonly (readonly [RegExp, number | null])[] = [
  [new RegExp(`^${IMPORT_PATH}$`), null],
  [new RegExp(`^${RESTORE_PATH}$`), 128 * 1024 * 1024],
  [/^\/api\/(batch|fields\.csv|labels\.csv)$/, 16 * 1024 * 1024],
  [/^\/api\/fields\//, 1024 * 1024],
  [/^\//, 64 * 1024],
];

/** Refuses a text of JSON that is small, but large once taken apart. */
const denseBodies: MiddlewareHandler = async ({ req }, next) => {
  if (isTooDense(await req.text())) {
    throw new InvalidInputError('REQUEST_UNREADABLE', 'The body holds too many values for its length.', {
      hint: 'Send a backup as the page or “drywake fields backup” has written it.',
    });
  }
  await next();
};

/** Refuses bodies that are larger than their address takes. */
export function bodyLimits(): MiddlewareHandler {
  const limits = LIMITS.map(
    ([path, most]) => [path, most === null ? null : bodyLimit({ maxSize: most })] as const,
  );
  return (context, next) => {
    const limit = limits.find(([path]) => path.test(context.req.path))?.[1] ?? null;
    if (limit === null) return next();
    const isLarge = context.req.path === RESTORE_PATH;
    return limit(context, isLarge ? async () => void (await denseBodies(context, next)) : next);
  };
}
