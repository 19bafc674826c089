import type { MiddlewareHandler } from 'hono';
import { DrywakeError } from '../../errors.ts';
import type { ServerGuard } from './serverGuard.ts';

/** Seconds after which a client that was sent away may come back. [s] */
const COME_BACK_SECONDS = 1;

/** Keeps the queue short: what would have to wait behind too many others is told to come back. */
export function underWay({ mostUnderWay }: Pick<ServerGuard, 'mostUnderWay'>): MiddlewareHandler {
  let count = 0;
  const end = () => {
    count--;
  };
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
    } catch (error) {
      end();
      throw error;
    }
    const { res } = context;
    if (!isTold(res)) return end();
    context.res = new Response(untilEnded(res.body, end), res);
  };
}

/** Whether an answer goes on being worked out while it is told, line by line. */
const isTold = (response: Response): response is Response & { readonly body: ReadableStream<Uint8Array> } =>
  response.body !== null && response.headers.get('content-type') === 'application/x-ndjson';

/** The same stream; says once when it has come to its end, failed, or is no longer wanted. */
function untilEnded(body: ReadableStream<Uint8Array>, ended: () => void): ReadableStream<Uint8Array> {
  const reader = body.getReader();
  return new ReadableStream({
    async pull(lines) {
      try {
        const { done, value } = await reader.read();
        if (!done) return lines.enqueue(value);
        ended();
        lines.close();
      } catch (error) {
        ended();
        lines.error(error);
      }
    },
    cancel(reason) {
      ended();
      return reader.cancel(reason);
    },
  });
}
