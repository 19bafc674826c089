import { OpenAPIHono } from '@hono/zod-openapi';
import type { MiddlewareHandler } from 'hono';
import { secureHeaders } from 'hono/secure-headers';
import { schemaRefusal } from '../app/schemaRefusal.ts';
import { InvalidInputError, MissingDataError } from '../errors.ts';
import { bodyLimits } from './bodyLimits.ts';
import type { HttpDeps } from './deps.ts';
import { foreignRequests } from './guard/foreignRequests.ts';
import { requestLog } from './guard/logLine.ts';
import { rateLimit } from './guard/rateLimit.ts';
import { OWN_COMPUTER } from './guard/serverGuard.ts';
import { tokenGuard } from './guard/tokenGuard.ts';
import { underWay } from './guard/underWay.ts';
import { servePage } from './page.ts';
import { answerProblem } from './problem.ts';
import { referencePage } from './reference.ts';
import { alternativesRoute } from './routes/alternatives.ts';
import { applicationRecordRoute } from './routes/applicationRecord.ts';
import { backupRoute } from './routes/backup.ts';
import { batchRoute } from './routes/batch.ts';
import { batchTemplateRoute } from './routes/batchTemplate.ts';
import { bioassayRoute } from './routes/bioassay.ts';
import { catalogueRoute } from './routes/catalogue.ts';
import { catalogueActiveRoute } from './routes/catalogueActive.ts';
import { catalogueCropRoute } from './routes/catalogueCrop.ts';
import { choicesRoute } from './routes/choices.ts';
import { compareRoute } from './routes/compare.ts';
import { cropsRoute } from './routes/crops.ts';
import { exampleRoute } from './routes/example.ts';
import { fieldAnswersRoute } from './routes/fieldAnswers.ts';
import { fieldSheetRoute } from './routes/fieldSheet.ts';
import { fieldsRoute } from './routes/fields.ts';
import { fieldsRefreshRoute } from './routes/fieldsRefresh.ts';
import { fieldsTableRoute } from './routes/fieldsTable.ts';
import { healthRoute } from './routes/health.ts';
import { hindcastRoute } from './routes/hindcast.ts';
import { labelsRoute } from './routes/labels.ts';
import { labelsTableRoute } from './routes/labelsTable.ts';
import { oddsRoute } from './routes/odds.ts';
import { regionRoute } from './routes/region.ts';
import { restoreRoute } from './routes/restore.ts';
import { sheetRoute } from './routes/sheet.ts';
import { sheetFileRoute } from './routes/sheetFile.ts';
import { stationsRoute } from './routes/stations.ts';
import { weatherCheckRoute } from './routes/weatherCheck.ts';
import { weatherImportRoute } from './routes/weatherImport.ts';
import { weatherNearRoute } from './routes/weatherNear.ts';

/** Longest address, which may hold a whole question. [characters] */
const MAX_ADDRESS = 16 * 1024;

const addressLimit: MiddlewareHandler = async ({ req }, next) => {
  if (req.url.length > MAX_ADDRESS) {
    throw new InvalidInputError('ADDRESS_TOO_LONG', `An address may have ${MAX_ADDRESS} characters.`, {
      hint: 'Send long questions as JSON.',
    });
  }
  await next();
};

/** The whole interface and the page, over adapters given from outside. No port is opened here. */
export function createApp(deps: HttpDeps) {
  const app = new OpenAPIHono({
    defaultHook: (result) => {
      if (result.success) return;
      const { data } = result as { readonly data?: unknown };
      throw schemaRefusal('REQUEST_UNREADABLE', result.error.issues, data, {
        hint: 'The interface’s own reference at /api lists every field.',
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
  const guard = deps.guard ?? OWN_COMPUTER;
  if (deps.logRequests) app.use(requestLog(deps.log));
  app.use(addressLimit);
  app.use(foreignRequests(guard));
  if (guard.token !== null) app.use(tokenGuard(guard.token));
  app.use('/api/*', rateLimit(guard));
  app.use('/api/*', underWay(guard));
  app.use('/api/*', bodyLimits());
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
    .route('/', compareRoute(deps))
    .route('/', cropsRoute(deps))
    .route('/', alternativesRoute(deps))
    .route('/', sheetRoute(deps))
    .route('/', sheetFileRoute(deps))
    .route('/', bioassayRoute(deps))
    .route('/', hindcastRoute(deps))
    .route('/', regionRoute(deps))
    .route('/', batchRoute(deps))
    .route('/', batchTemplateRoute())
    .route('/', stationsRoute(deps))
    .route('/', choicesRoute(deps))
    .route('/', catalogueRoute(deps))
    .route('/', catalogueActiveRoute(deps))
    .route('/', catalogueCropRoute(deps))
    .route('/', weatherNearRoute(deps))
    .route('/', weatherCheckRoute(deps))
    .route('/', weatherImportRoute(deps))
    .route('/', fieldsRoute(deps))
    .route('/', fieldsTableRoute(deps))
    .route('/', labelsRoute(deps))
    .route('/', labelsTableRoute(deps))
    .route('/', fieldAnswersRoute(deps))
    .route('/', fieldSheetRoute(deps))
    .route('/', fieldsRefreshRoute(deps))
    .route('/', applicationRecordRoute(deps))
    .route('/', backupRoute(deps))
    .route('/', restoreRoute(deps))
    .route('/', exampleRoute(deps))
    .route('/', healthRoute(deps));
  referencePage(app, deps.version);
  if (deps.pageFolder !== null) servePage(app, deps.pageFolder);
  return routes;
}
