import type { MiddlewareHandler } from 'hono';
import { DrywakeError } from '../../errors.ts';
import type { ServerGuard } from './serverGuard.ts';

/** Seconds after which a client that was sent away may come back. [s] */
const COME_BACK_SECONDS = 1;

/** Keeps the queue short: what would have to wait behind too many others is told to come back. */
export function underWay({ mostUnderWay }: Pick<ServerGuard, 'mostUnderWay'>): MiddlewareHandler {
  let count = 0;
  return async (context, next) => {
    if (count >= mostUnderWay) {
      context.header('Retry-After', String(COME_BACK_SECONDS));
      throw new DrywakeError('conflict', 'SERVER_BUSY', 'The server has as much to do as it can hold.', {
        hint: `Ask again in ${COME_BACK_SECONDS} s.`,
        details: { underWay: count },
      });
    }
    count++;
    try {
      await next();
    } finally {
      count--;
    }
  };
}
