import type { Hono } from 'hono';
import { isId } from '../wire/snowflake.ts';
import type { ChannelState } from '../world/state.ts';

/** Types a browser may show in place; anything else is handed over as a file, so that nothing in it can run. */
const SHOWN = /^(image\/(png|jpeg|gif|webp)|text\/plain|text\/csv|application\/json)$/;

/** Attachments of people and bot. */
export function cdnRoutes(app: Hono, { world }: ChannelState): void {
  app.get('/cdn/attachments/:channel/:file/:name', (c) => {
    const id = c.req.param('file');
    const file = isId(id) ? world.storage.file(id) : undefined;
    if (file === undefined) return c.text('No such file.', 404);
    const shown = SHOWN.test(file.type);
    c.header('Content-Type', file.type.startsWith('text/') ? `${file.type}; charset=utf-8` : file.type);
    c.header('X-Content-Type-Options', 'nosniff');
    c.header('Content-Security-Policy', "default-src 'none'; sandbox");
    c.header('Cache-Control', 'private, max-age=31536000, immutable');
    c.header(
      'Content-Disposition',
      `${shown ? 'inline' : 'attachment'}; filename*=UTF-8''${encodeURIComponent(file.name)}`,
    );
    return c.body(new Uint8Array(file.bytes));
  });
}
