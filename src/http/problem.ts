import type { Context } from 'hono';
import { HTTPException } from 'hono/http-exception';
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import { sayIn } from '../app/say.ts';
import { datesReworded } from '../dateWords.ts';
import { DrywakeError } from '../errors.ts';
import type { Problem } from '../schema/answer.ts';
import { wordingSchema } from '../schema/wording.ts';
import { unforeseenLine } from './guard/logLine.ts';

/** Status of each family of refusal; the only such table. */
const STATUS_OF = {
  'invalid-input': 422,
  'out-of-range': 422,
  'missing-data': 422,
  'source-failed': 422,
  conflict: 409,
} as const;

/** Refusals about a thing that was named and is not there. */
const NOT_FOUND = new Set([
  'STATION_UNKNOWN',
  'STORE_EMPTY',
  'ROUTE_UNKNOWN',
  'FIELD_UNKNOWN',
  'LABEL_UNKNOWN',
  'TREATMENT_UNKNOWN',
  'PLAN_UNKNOWN',
]);

/** Refusals of who asks, not of what is asked. */
const FORBIDDEN = new Set(['ORIGIN_REFUSED', 'HOST_REFUSED']);

/** Refusals with a status of their own. */
const OWN_STATUS: Readonly<Record<string, ContentfulStatusCode>> = {
  TOKEN_MISSING: 401,
  TOO_MANY_REQUESTS: 429,
  SERVER_BUSY: 503,
  ADDRESS_TOO_LONG: 414,
  VERSION_MISSING: 428,
};

/** Whether a client hung up, or was hung up on, before its request was here whole. */
const isCutOff = (error: unknown): boolean =>
  error instanceof Error && (error as NodeJS.ErrnoException).code === 'ECONNRESET';

/** The one error shape of every route. */
export function problemOf(error: unknown): { status: ContentfulStatusCode; problem: Problem } {
  if (error instanceof DrywakeError) {
    const { code, message, details, hint } = error;
    const status =
      OWN_STATUS[code] ?? (NOT_FOUND.has(code) ? 404 : FORBIDDEN.has(code) ? 403 : STATUS_OF[error.kind]);
    return { status, problem: { code, message, details, hint } };
  }
  if (error instanceof HTTPException) {
    return {
      status: error.status as ContentfulStatusCode,
      problem: {
        code: error.status === 413 ? 'BODY_TOO_LARGE' : 'REQUEST_UNREADABLE',
        message: error.message || 'The request could not be read.',
        details: {},
        hint: 'Send one JSON object with the content type application/json.',
      },
    };
  }
  if (isCutOff(error)) {
    return {
      status: 400,
      problem: {
        code: 'REQUEST_UNREADABLE',
        message: 'The request ended before all of it was here.',
        details: {},
        hint: 'Send it again; a slow connection may need a smaller file.',
      },
    };
  }
  return {
    status: 500,
    problem: {
      code: 'UNEXPECTED',
      message: 'Something went wrong that should not have; nothing was changed by it.',
      details: {},
      hint: 'The server’s own log says where.',
    },
  };
}

/**
 * Answers with an error in the one shape, dates of its message as the request asks for them; its hint says what to send,
 * and that is ISO dates. What nobody foresaw also goes to the log.
 */
export function answerProblem(error: unknown, context: Context, log: (line: string) => void): Response {
  const { status, problem } = problemOf(error);
  if (problem.code === 'UNEXPECTED') log(unforeseenLine(error));
  const asked = wordingSchema.safeParse({
    units: context.req.query('units'),
    dates: context.req.query('dates'),
  });
  const { dates } = sayIn(asked.success ? asked.data : {});
  return context.json({ ...problem, message: datesReworded(problem.message, dates) }, status);
}
