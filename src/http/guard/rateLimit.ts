import type { Context, MiddlewareHandler } from 'hono';
import { RateLimiterMemory, type RateLimiterRes } from 'rate-limiter-flexible';
import { DrywakeError } from '../../errors.ts';
import type { ServerGuard } from './serverGuard.ts';

/** Time over which requests are counted. [s] */
const WINDOW_SECONDS = 2;

/** Tells a client that asks more often than the page ever would to wait. Clients are told apart by their address. */
export function rateLimit({ requestsPerSecond }: Pick<ServerGuard, 'requestsPerSecond'>): MiddlewareHandler {
  if (!Number.isFinite(requestsPerSecond)) return async (_, next) => next();
  const limiter = new RateLimiterMemory({
    points: requestsPerSecond * WINDOW_SECONDS,
    duration: WINDOW_SECONDS,
  });
  return async (context, next) => {
    const waitMs = await limiter.consume(clientOf(context)).then(
      () => null,
      (refused: RateLimiterRes) => refused.msBeforeNext,
    );
    if (waitMs !== null) {
      context.header('Retry-After', String(Math.max(1, Math.ceil(waitMs / 1000))));
      throw new DrywakeError('conflict', 'TOO_MANY_REQUESTS', 'Too many requests in a short time.', {
        hint: 'Wait a moment and ask again.',
        details: { waitMs },
      });
    }
    await next();
  };
}

/** Address of who asks; one name for all where there is no connection. */
const clientOf = ({ env }: Context): string => env?.incoming?.socket?.remoteAddress ?? 'within';
