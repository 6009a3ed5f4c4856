import type { IncomingMessage } from 'node:http';

/** A file of 64 MiB as base64 with room around it. */
export const bodyLimit = 96 * 1024 * 1024;

export type Body = { readonly value: unknown } | { readonly status: 400 | 413 | 415; readonly sentence: string };

const tooLarge = {
  status: 413,
  sentence: 'That is more than the program takes at once (96 MiB). Split the file and hand over the parts one after another.',
} as const;

/** The JSON in a request's body, held to the limit while it arrives, or why it was not taken. Nothing is read of other kinds. */
export async function readJson(request: IncomingMessage, limit: number = bodyLimit): Promise<Body> {
  const type = (request.headers['content-type'] ?? '').split(';')[0]?.trim().toLowerCase();
  if (type !== 'application/json') return { status: 415, sentence: 'Only JSON is taken here.' };
  if (Number(request.headers['content-length'] ?? 0) > limit) return tooLarge;
  const chunks: Buffer[] = [];
  let length = 0;
  for await (const chunk of request.iterator({ destroyOnReturn: false })) {
    length += (chunk as Buffer).length;
    if (length > limit) return tooLarge;
    chunks.push(chunk as Buffer);
  }
  try {
    return { value: JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(chunks))) };
  } catch {
    return { status: 400, sentence: 'That is no readable JSON.' };
  }
}
