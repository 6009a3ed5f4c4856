import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { beforeAll, expect, test } from 'vitest';
import { makeParts, root } from '#build/making/makeParts.ts';
import type { BookStatus } from '#shared/contract/book.ts';
import type { Answer } from '#shared/faults.ts';
import { valueOf } from './deskSuite.ts';
import { httpAsk, openSession } from './httpAsk.ts';
import { trialFolder } from './trialFolder.ts';

beforeAll(() => makeParts(['renderer', 'electron']));

/** `npm start` where no window can be shown. */
function startProgram(folder: string, more: Record<string, string> = {}): ChildProcess {
  const environment = { ...process.env, OUTYARD_FOLDER: folder, DISPLAY: '', WAYLAND_DISPLAY: '', ...more };
  return spawn(process.execPath, [join(root, 'build', 'start.ts')], { env: environment, stdio: ['ignore', 'pipe', 'pipe'] });
}

async function firstLine(program: ChildProcess): Promise<string> {
  if (program.stdout === null) throw new Error('no output to read');
  const [line] = (await once(createInterface(program.stdout), 'line')) as [string];
  return line;
}

test('prints the opening address alone, serves the page and the desk, and ends when told', async () => {
  const trial = trialFolder();
  const program = startProgram(trial.folder, { OUTYARD_HEADLESS: '1' });
  const address = await firstLine(program);
  expect(address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/open\?token=[\w-]{43}$/);

  const session = await openSession(address);
  const page = await httpAsk(session.port, 'GET', '/', { cookie: session.cookie });
  expect(page.text).toContain('<title>Outyard</title>');
  const script = / src="\.(\/assets\/[\w.-]+\.js)"/.exec(page.text)?.[1] ?? '';
  expect((await httpAsk(session.port, 'GET', script, { cookie: session.cookie })).status).toBe(200);

  const headers = { cookie: session.cookie, origin: session.origin, 'content-type': 'application/json' };
  const answer = await httpAsk(session.port, 'POST', '/desk/book.status', headers, '{}');
  const status = await valueOf(Promise.resolve(JSON.parse(answer.text) as Answer<BookStatus>));
  expect(status).toMatchObject({ folder: trial.folder, book: null });

  // A person may come back to the printed address from another browser.
  expect((await openSession(address)).cookie).toBe(session.cookie);

  program.kill('SIGTERM');
  const [code] = (await once(program, 'exit')) as [number | null];
  expect(code).toBe(0);
  await expect(httpAsk(session.port, 'GET', '/')).rejects.toMatchObject({ code: 'ECONNREFUSED' });
  trial.remove();
});

// Elsewhere there always is one.
if (process.platform === 'linux') test('tries no window without a display', async () => {
  const trial = trialFolder();
  const program = startProgram(trial.folder);
  const said: string[] = [];
  program.stderr?.on('data', (data: Buffer) => said.push(data.toString()));
  expect(await firstLine(program)).toMatch(/^http:/);
  expect(said.join('')).toBe('Open this address in a browser on this machine; stop with Ctrl+C.\n');
  expect(readdirSync(trial.folder).filter((name) => name !== 'program')).toEqual([]);
  program.kill('SIGINT');
  const [code] = (await once(program, 'exit')) as [number | null];
  expect(code).toBe(0);
  trial.remove();
});
