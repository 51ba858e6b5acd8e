import { createServer, type IncomingMessage, request, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Exchange } from './published-api.ts';

/** Stands between the bot and the channel's HTTP side and hears everything that is said. */
export interface WireTap {
  /** For the bot, instead of the channel's own. */
  readonly apiUrl: string;
  /** Requests and their answers, as parsed JSON, in the order they were answered in. */
  readonly exchanges: readonly Exchange[];
  /** Called with each request before it goes on, and once it has taken effect but is not yet answered. */
  onRequest: (when: 'before' | 'after', request: { readonly method: string; readonly path: string }) => void;
  close(): Promise<void>;
}

/** Opens a tap on loopback; a connection torn on one side is torn on the other. The gateway is not tapped. */
export async function tapWire(apiUrl: string): Promise<WireTap> {
  const exchanges: Exchange[] = [];
  const target = new URL(apiUrl);
  const server = createServer((incoming, answer) => void pass(incoming, answer));
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  // A TCP server that listens has an address of this form; only pipes have another.
  const { port } = server.address() as AddressInfo;
  const tap: WireTap = {
    apiUrl: `http://127.0.0.1:${port}/api`,
    exchanges,
    onRequest: () => {},
    async close() {
      const closed = new Promise((resolve) => server.close(resolve));
      server.closeAllConnections();
      await closed;
    },
  };
  return tap;

  async function pass(incoming: IncomingMessage, answer: ServerResponse): Promise<void> {
    const { method = 'GET', url = '/' } = incoming;
    const path = url.replace('/api/v10', '');
    const tear = (): void => void incoming.socket.resetAndDestroy();
    const asked = await whole(incoming);
    tap.onRequest('before', { method, path });
    const onward = request(
      {
        host: target.hostname,
        port: target.port,
        method,
        path: url,
        headers: { ...incoming.headers, host: target.host },
      },
      (came) => {
        void whole(came).then((body) => {
          const status = came.statusCode ?? 0;
          const request = jsonOf(asked, incoming.headers['content-type']);
          const response = jsonOf(body, came.headers['content-type']);
          exchanges.push({ method, path, status, request, response });
          tap.onRequest('after', { method, path });
          answer.writeHead(status, came.headers);
          answer.end(body);
        }, tear);
      },
    );
    onward.on('error', tear);
    onward.end(asked);
  }
}

async function whole(stream: IncomingMessage): Promise<Buffer> {
  const parts: Buffer[] = [];
  for await (const part of stream) parts.push(part as Buffer); // a stream without an encoding gives buffers
  return Buffer.concat(parts);
}

/** The JSON of a body, out of its form where files go with it (one line of it, as the client writes it). */
function jsonOf(body: Buffer, type = ''): unknown {
  if (body.length === 0) return undefined;
  const text = body.toString();
  if (!type.startsWith('multipart/form-data')) return JSON.parse(text);
  const payload = /name="payload_json"\r\n(?:[^\r\n]+\r\n)*\r\n(.*)\r\n--/.exec(text)?.[1];
  return payload === undefined ? undefined : JSON.parse(payload);
}
