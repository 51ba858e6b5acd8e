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
          exchanges.push({ method, path, status, request: json(asked), response: json(body) });
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

function json(body: Buffer): unknown {
  return body.length === 0 ? undefined : JSON.parse(body.toString());
}
