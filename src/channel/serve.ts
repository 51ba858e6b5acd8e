import { createServer, type IncomingMessage } from 'node:http';
import type { AddressInfo } from 'node:net';
import { getRequestListener } from '@hono/node-server';
import type { Hono } from 'hono';
import type { WebSocketServer } from 'ws';
import { whyNot } from './page-server/guard.ts';

export interface ServeOptions {
  readonly app: Hono;
  readonly host: string;
  readonly port: number;
  /** The sockets that a path belongs to. */
  readonly sockets: (pathname: string) => WebSocketServer;
}

export interface Serving {
  /** `http://127.0.0.1:PORT`. */
  readonly origin: string;
  /** Ends every connection, under way or not. */
  close(): Promise<void>;
}

/** Listens for requests and sockets on one port. @throws Error of node:net when the port cannot be had. */
export async function serve({ app, host, port, sockets }: ServeOptions): Promise<Serving> {
  const listener = getRequestListener(app.fetch);
  const server = createServer((request, response) => void listener(request, response));
  server.on('upgrade', (request, socket, head) => {
    if (strange(request, host)) {
      socket.end('HTTP/1.1 403 Forbidden\r\nConnection: close\r\n\r\n');
      return;
    }
    const { pathname } = new URL(request.url ?? '/', 'ws://loopback');
    const taking = sockets(pathname);
    taking.handleUpgrade(request, socket, head, (webSocket) => taking.emit('connection', webSocket, request));
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, host, () => {
      server.off('error', reject);
      resolve();
    });
  });
  // A TCP server that listens has an address of this form; only pipes have another.
  const { port: taken } = server.address() as AddressInfo;
  return {
    origin: `http://${reachableAs(host)}:${taken}`,
    async close() {
      const closed = new Promise<void>((resolve) => server.close(() => resolve()));
      server.closeAllConnections();
      await closed;
    },
  };
}

/** A socket can speak as well as a POST can, so it is held to the same. */
function strange({ headers }: IncomingMessage, listensOn: string): boolean {
  const asking = { method: 'POST', host: headers.host, origin: headers.origin, fetchSite: undefined };
  return whyNot(asking, listensOn) !== undefined;
}

/** A server that listens on every address is reached on loopback. */
function reachableAs(host: string): string {
  if (host === '0.0.0.0' || host === '::') return '127.0.0.1';
  return host.includes(':') ? `[${host}]` : host;
}
