import { Agent, type IncomingHttpHeaders, request } from 'node:http';
import { setTimeout as pause } from 'node:timers/promises';

// Clients in a process of their own, each with one connection: editingClient.ts ADDRESS CLIENTS FIELD… adds one to the
// note of each field, every second client in the other order, and prints what was acknowledged as JSON.
const [address, clients, ...ids] = process.argv.slice(2);

interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly body: { readonly version: number; readonly record: { readonly note: string } };
}

/** What one client was told that was kept. */
export interface Acknowledged {
  readonly id: string;
  readonly version: number;
}

function ask(agent: Agent, id: string, change?: { readonly record: object; readonly version: number }) {
  const body = change && JSON.stringify(change.record);
  const options = {
    agent,
    method: change ? 'PUT' : 'GET',
    headers: change && { 'content-type': 'application/json', 'if-match': `"${change.version}"` },
  };
  return new Promise<Answer>((resolve, reject) => {
    const sent = request(`${address}api/fields/${id}`, options, async (response) => {
      const pieces = [];
      for await (const piece of response) pieces.push(piece);
      const { statusCode = 0, headers } = response;
      resolve({ status: statusCode, headers, body: JSON.parse(String(Buffer.concat(pieces))) });
    });
    sent.on('error', reject);
    sent.end(body);
  });
}

/** Asks until the server has room. */
async function askedThrough(...asked: Parameters<typeof ask>): Promise<Answer> {
  const answer = await ask(...asked);
  if (answer.status !== 429 && answer.status !== 503) return answer;
  await pause(1000 * Number(answer.headers['retry-after']));
  return askedThrough(...asked);
}

/** Adds one to the note of a field, over again where another client was quicker. */
async function addOne(agent: Agent, id: string): Promise<Acknowledged> {
  const { status, body } = await askedThrough(agent, id);
  if (status !== 200) throw new Error(`${id} could not be read: ${status} ${JSON.stringify(body)}`);
  const record = { ...body.record, note: String(Number(body.record.note) + 1) };
  const put = await askedThrough(agent, id, { record, version: body.version });
  if (put.status === 409) return addOne(agent, id);
  if (put.status !== 200) throw new Error(`${id} was not kept: ${put.status} ${JSON.stringify(put.body)}`);
  return { id, version: put.body.version };
}

async function client(number: number): Promise<Acknowledged[]> {
  const agent = new Agent({ keepAlive: true, maxSockets: 1 });
  const told = [];
  for (const id of number % 2 === 0 ? ids : ids.toReversed()) told.push(await addOne(agent, id));
  agent.destroy();
  return told;
}

const told = await Promise.all(Array.from({ length: Number(clients) }, (_, number) => client(number)));
process.stdout.write(JSON.stringify(told.flat()));
