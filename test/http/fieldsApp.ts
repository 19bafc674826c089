import { createApp } from '../../src/http/createApp.ts';
import { openFields } from '../store/openFields.ts';
import { tempFolder } from '../tempFolder.ts';
import { demoDeps } from './demoDeps.ts';
import { deskOver } from './deskOver.ts';

const ADDRESS = 'http://localhost';

/** The interface over a real store of fields in an empty data folder, and the demo's weather. */
export async function fieldsApp() {
  const folder = tempFolder();
  const store = await openFields(folder);
  const app = createApp({ ...demoDeps, ...deskOver(store, folder, demoDeps.weather) });
  /** Asks, with a JSON body where there is one. */
  async function ask(
    method: string,
    path: string,
    body?: unknown,
    headers: Record<string, string> = {},
  ): Promise<{ status: number; headers: Headers; body: unknown }> {
    const response = await app.request(`${ADDRESS}${path}`, {
      method,
      headers: { ...(body !== undefined && { 'content-type': 'application/json' }), ...headers },
      ...(body !== undefined && { body: JSON.stringify(body) }),
    });
    return { status: response.status, headers: response.headers, body: await response.json() };
  }
  return { app, ask };
}
