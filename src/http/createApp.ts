import { OpenAPIHono } from '@hono/zod-openapi';
import { bodyLimit } from 'hono/body-limit';
import { secureHeaders } from 'hono/secure-headers';
import { InvalidInputError, MissingDataError } from '../errors.ts';
import type { HttpDeps } from './deps.ts';
import { servePage } from './page.ts';
import { answerProblem } from './problem.ts';
import { referencePage } from './reference.ts';
import { choicesRoute } from './routes/choices.ts';
import { exampleRoute } from './routes/example.ts';
import { healthRoute } from './routes/health.ts';
import { oddsRoute } from './routes/odds.ts';
import { stationsRoute } from './routes/stations.ts';

/** Largest request body. [bytes] */
const MAX_BODY_BYTES = 64 * 1024;

/** The whole interface and the page, over adapters given from outside. No port is opened here. */
export function createApp(deps: HttpDeps) {
  const app = new OpenAPIHono({
    defaultHook: (result) => {
      if (result.success) return;
      const [first] = result.error.issues;
      const field = first.path.join('.');
      throw new InvalidInputError('REQUEST_UNREADABLE', `${field ? `${field}: ` : ''}${first.message}.`, {
        hint: 'The interface’s own reference at /api lists every field.',
        details: {
          field,
          issues: result.error.issues.map(({ path, message }) => ({ field: path.join('.'), message })),
        },
      });
    },
  });
  app.use(
    secureHeaders({
      contentSecurityPolicy: {
        defaultSrc: ["'self'"],
        imgSrc: ["'self'", 'data:', 'blob:'],
        objectSrc: ["'none'"],
        baseUri: ["'none'"],
        frameAncestors: ["'none'"],
        formAction: ["'self'"],
      },
      xFrameOptions: 'DENY',
      referrerPolicy: 'no-referrer',
      strictTransportSecurity: false,
    }),
  );
  app.use('/api/*', bodyLimit({ maxSize: MAX_BODY_BYTES }));
  app.onError((error, context) => answerProblem(error, context, deps.log));
  app.notFound((context) =>
    answerProblem(
      new MissingDataError(
        'ROUTE_UNKNOWN',
        `There is nothing at ${context.req.method} ${context.req.path}.`,
        {
          hint: 'The interface’s own reference is at /api.',
        },
      ),
      context,
      deps.log,
    ),
  );

  const routes = app
    .route('/', oddsRoute(deps))
    .route('/', stationsRoute(deps))
    .route('/', choicesRoute(deps))
    .route('/', exampleRoute(deps))
    .route('/', healthRoute(deps));
  referencePage(app, deps.version);
  if (deps.pageFolder !== null) servePage(app, deps.pageFolder);
  return routes;
}

/** Type of the interface, for a typed client. */
export type Api = ReturnType<typeof createApp>;
