import { inflateSync } from 'node:zlib';

/**
 * The text of each page of a PDF that the browser has printed: its pages' content streams, decoded with the fonts' own
 * tables of what their signs mean. Reads what Chromium writes (plain objects, deflated streams), not every PDF.
 */
export function pdfText(file: Buffer): string[] {
  const objects = readObjects(file);
  const pages = [...objects.values()].filter(({ head }) => /\/Type\s*\/Page\b/.test(head));
  const signsOf = new Map<string, Signs>();
  const signs = (font: string): Signs => {
    const known = signsOf.get(font);
    if (known !== undefined) return known;
    const table = refIn(objects.get(font)?.head ?? '', 'ToUnicode');
    const read = table === null ? noSigns : readSigns(objects.get(table)?.stream ?? '');
    signsOf.set(font, read);
    return read;
  };
  return pages.map(({ head }) => {
    const resources = refIn(head, 'Resources');
    const within = resources === null ? head : (objects.get(resources)?.head ?? '');
    const fontList = /\/Font\s*(?:<<([\s\S]*?)>>|(\d+) 0 R)/.exec(within);
    const fontText = fontList?.[1] ?? objects.get(fontList?.[2] ?? '')?.head ?? '';
    const fonts = new Map([...fontText.matchAll(/\/(\w+)\s+(\d+) 0 R/g)].map(([, name = '', id = '']) => [name, id]));
    const contents = [...(/\/Contents\s*(?:\[([^\]]*)\]|(\d+ 0 R))/.exec(head)?.slice(1).filter(Boolean).join(' ') ?? '').matchAll(/(\d+) 0 R/g)].map(([, id = '']) => objects.get(id)?.stream ?? '');
    return drawnText(contents.join('\n'), (name) => signs(fonts.get(name) ?? ''));
  });
}

/** What the codes of a font mean, and how many hex digits a code has. */
interface Signs {
  readonly digits: number;
  readonly meaning: ReadonlyMap<number, string>;
}

const noSigns: Signs = { digits: 4, meaning: new Map() };

interface PdfObject {
  readonly head: string;
  readonly stream: string;
}

function readObjects(file: Buffer): Map<string, PdfObject> {
  const text = file.toString('latin1');
  const objects = new Map<string, PdfObject>();
  for (const found of text.matchAll(/(?:^|\n)(\d+) 0 obj\s([\s\S]*?)endobj/g)) {
    const [, id = '', body = ''] = found;
    const at = body.indexOf('stream\n') >= 0 ? body.indexOf('stream\n') + 7 : body.indexOf('stream\r\n') + 8;
    const head = at > 7 ? body.slice(0, at) : body;
    const raw = at > 7 ? Buffer.from(body.slice(at, body.lastIndexOf('endstream')), 'latin1') : null;
    objects.set(id, { head, stream: raw === null ? '' : /FlateDecode/.test(head) ? inflated(raw) : raw.toString('latin1') });
  }
  return objects;
}

function inflated(raw: Buffer): string {
  try {
    return inflateSync(raw).toString('latin1');
  } catch {
    // A picture or a font whose bytes look like the end of an object; no text is in it.
    return '';
  }
}

function refIn(head: string, name: string): string | null {
  return new RegExp(`/${name}\\s+(\\d+) 0 R`).exec(head)?.[1] ?? null;
}

function readSigns(table: string): Signs {
  const signs = new Map<number, string>();
  const unicode = (hex: string) => Buffer.from(hex, 'hex').swap16().toString('utf16le');
  for (const [, block = ''] of table.matchAll(/beginbfchar([\s\S]*?)endbfchar/g)) {
    for (const [, from = '', to = ''] of block.matchAll(/<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>/g)) signs.set(parseInt(from, 16), unicode(to));
  }
  for (const [, block = ''] of table.matchAll(/beginbfrange([\s\S]*?)endbfrange/g)) {
    for (const [, from = '', until = '', to = ''] of block.matchAll(/<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>/g)) {
      const first = parseInt(from, 16);
      for (let code = first; code <= parseInt(until, 16); code += 1) signs.set(code, String.fromCodePoint(parseInt(to, 16) + code - first));
    }
  }
  return { digits: /begincodespacerange\s*<([0-9A-Fa-f]+)>/.exec(table)?.[1]?.length ?? 4, meaning: signs };
}

function drawnText(content: string, signsOf: (font: string) => Signs): string {
  let font = noSigns;
  let text = '';
  for (const [, name, shown, end] of content.matchAll(/\/(\w+)\s+[-\d.]+\s+Tf|(\[[^\]]*\]\s*TJ|<[0-9A-Fa-f]*>\s*Tj)|(\bET\b)/g)) {
    if (name !== undefined) font = signsOf(name);
    for (const [, hex = ''] of (shown ?? '').matchAll(/<([0-9A-Fa-f]*)>/g)) {
      for (let at = 0; at + font.digits <= hex.length; at += font.digits) text += font.meaning.get(parseInt(hex.slice(at, at + font.digits), 16)) ?? '';
    }
    if (end !== undefined) text += '\n';
  }
  return text;
}
