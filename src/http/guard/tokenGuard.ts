import { createHash, timingSafeEqual } from 'node:crypto';
import type { Context, MiddlewareHandler } from 'hono';
import { getCookie, setCookie } from 'hono/cookie';
import { DrywakeError } from '../../errors.ts';

/** Cookie that holds the token once a browser has opened the address that carries it. */
const COOKIE = 'drywake_token';
/** A browser keeps it for a season. [s] */
const KEPT_SECONDS = 180 * 24 * 3600;

/**
 * Lets through who shows the token: in the address once (`?token=`), which hands it to the browser as a cookie that no
 * script reads and no other site sends, or as `Authorization: Bearer`.
 */
export const tokenGuard =
  (token: string): MiddlewareHandler =>
  async (context, next) => {
    const { req } = context;
    const inAddress = req.query('token');
    if (inAddress !== undefined && req.method === 'GET' && isSame(inAddress, token))
      return handOver(context, token);
    const shown =
      /^Bearer (\S+)$/i.exec(req.header('authorization') ?? '')?.[1] ?? getCookie(context, COOKIE);
    if (shown === undefined || !isSame(shown, token)) {
      throw new DrywakeError('conflict', 'TOKEN_MISSING', 'This server asks for its token.', {
        hint: 'Open the whole address that “drywake serve” printed, with the token at its end.',
      });
    }
    await next();
  };

/** Sets the cookie and takes the token out of the address, so that no history or copied link holds it. */
function handOver(context: Context, token: string): Response {
  setCookie(context, COOKIE, token, {
    httpOnly: true,
    sameSite: 'Strict',
    path: '/',
    maxAge: KEPT_SECONDS,
  });
  const { pathname, searchParams } = new URL(context.req.url);
  searchParams.delete('token');
  const rest = searchParams.toString();
  // Never "//elsewhere": one slash, then what was asked for.
  return context.redirect(`/${pathname.replace(/^\/+/, '')}${rest === '' ? '' : `?${rest}`}`, 303);
}

const digest = (text: string): Buffer => createHash('sha256').update(text).digest();

/** Compares without telling by the time taken how much is right. */
const isSame = (one: string, other: string): boolean => timingSafeEqual(digest(one), digest(other));
