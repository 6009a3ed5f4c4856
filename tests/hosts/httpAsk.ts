import { request, type IncomingHttpHeaders } from 'node:http';

export interface HttpAnswer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly text: string;
}

/** One plain request to this machine, with headers exactly as given (a browser's own client would set some itself). */
export function httpAsk(
  port: number,
  method: string,
  path: string,
  headers: Readonly<Record<string, string>> = {},
  body?: string | Uint8Array,
): Promise<HttpAnswer> {
  return new Promise((resolve, reject) => {
    const asked = request({ host: '127.0.0.1', port, method, path, headers, agent: false, setHost: !('host' in headers) }, (response) => {
      const chunks: Buffer[] = [];
      response.on('data', (chunk: Buffer) => chunks.push(chunk));
      response.on('end', () =>
        resolve({ status: response.statusCode ?? 0, headers: response.headers, text: Buffer.concat(chunks).toString('utf8') }),
      );
      response.on('error', reject);
    });
    asked.on('error', reject);
    asked.end(body);
  });
}

/** Opens the program as a browser does: follows the opening address once and keeps the cookie. */
export async function openSession(openingAddress: string): Promise<{ port: number; origin: string; cookie: string }> {
  const { port, origin, pathname, search } = new URL(openingAddress);
  const answer = await httpAsk(Number(port), 'GET', pathname + search);
  const cookie = answer.headers['set-cookie']?.[0]?.split(';')[0];
  if (answer.status !== 303 || cookie === undefined) throw new Error(`the opening address answered ${answer.status}: ${answer.text}`);
  return { port: Number(port), origin, cookie };
}
