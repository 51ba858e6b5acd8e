import { promises as fs } from 'node:fs';
import { createRequire, stripTypeScriptTypes } from 'node:module';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Context, Hono } from 'hono';

const PAGE = new URL('../page/', import.meta.url);

/** The one library the page uses, as its package ships it for browsers: a single module without imports. */
const MARKDOWN_IT = path.join(
  path.dirname(createRequire(import.meta.url).resolve('markdown-it')),
  'browser/markdown-it.esm.min.mjs',
);

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.ts': 'text/javascript; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
};

/** Nothing runs or is shown but what this server itself sends; pictures also from what the page holds in memory. */
function headersFor(host: string): Record<string, string> {
  const policy = [
    "default-src 'none'",
    "script-src 'self'",
    "style-src 'self'",
    "img-src 'self' blob: data:",
    `connect-src 'self' ws://${host}`,
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ];
  return {
    'Content-Security-Policy': policy.join('; '),
    'X-Content-Type-Options': 'nosniff',
    'Referrer-Policy': 'no-referrer',
    'Cross-Origin-Opener-Policy': 'same-origin',
    'Cross-Origin-Resource-Policy': 'same-origin',
    'Cache-Control': 'no-cache',
  };
}

/** The page: `GET /` and `/page/…`. Its TypeScript is sent with the types taken out, once per file. */
export function staticRoutes(app: Hono): void {
  const files = new Map<string, Promise<string>>();
  const load = (name: string): Promise<string> => {
    const known = files.get(name);
    if (known !== undefined) return known;
    const fresh = read(name);
    files.set(name, fresh);
    // A file that could not be read is tried again the next time.
    fresh.catch(() => files.delete(name));
    return fresh;
  };

  const send = async (c: Context, name: string): Promise<Response> => {
    const type = TYPES[/\.[a-z]+$/.exec(name)?.[0] ?? ''];
    if (type === undefined || !/^([a-z0-9-]+\/)*[a-z0-9-]+\.[a-z]+$/.test(name)) return c.notFound();
    try {
      const text = await load(name);
      return c.body(text, 200, { 'Content-Type': type, ...headersFor(c.req.header('host') ?? '') });
    } catch (error) {
      if (isMissing(error)) return c.notFound();
      throw error;
    }
  };

  app.get('/', (c) => send(c, 'index.html'));
  app.get('/page/*', (c) => send(c, c.req.path.slice('/page/'.length)));
}

async function read(name: string): Promise<string> {
  if (name === 'vendor/markdown-it.js') return fs.readFile(MARKDOWN_IT, 'utf8');
  const text = await fs.readFile(fileURLToPath(new URL(name, PAGE)), 'utf8');
  return name.endsWith('.ts') ? stripTypeScriptTypes(text) : text;
}

const isMissing = (error: unknown): boolean =>
  error instanceof Error && 'code' in error && (error.code === 'ENOENT' || error.code === 'EISDIR');
