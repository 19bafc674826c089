import { problemSchema } from '../schema/answer.ts';

const problem = (description: string) => ({
  description,
  content: { 'application/json': { schema: problemSchema } },
});

/** The refusals that every route may answer with. */
export const problemResponses = {
  400: problem('The request could not be read'),
  403: problem('Asked by a page of another origin'),
  404: problem('What was named is not there'),
  409: problem('Somebody else holds what was asked for'),
  413: problem('The request is too large'),
  415: problem('The body is not JSON'),
  422: problem('The question does not fit together, or the data do not carry an answer'),
  428: problem('The change does not say which version it takes the place of'),
  500: problem('Nobody foresaw this'),
};
