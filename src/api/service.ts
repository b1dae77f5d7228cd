// The service on a port: an HTTP server with limits around the app, and a clean stop. Started by `ovenward serve`.
import { createServer, type Server } from 'node:http';
import { createApp } from './createApp.ts';
import { isLoopback } from './loopback.ts';
import type { ApiParts } from './parts.ts';

export type ServiceSettings = {
  /** 0: any free port. */
  readonly port: number;
  /** IP address to listen on. Default 127.0.0.1. */
  readonly host?: string;
  /** Must be true for an address other machines can reach. */
  readonly isOpenToAnyone?: boolean;
  /** Seconds a request may take to arrive. Default 30. */
  readonly arrivalSeconds?: number;
  /** How long running searches have to hand in their best once the service is asked to stop. Default 8,000. */
  readonly graceMs?: number;
};

export type Service = {
  readonly url: string;
  /** Takes no more work, lets what runs end with its best, and resolves when the last answer has left and the store is closed. */
  readonly stop: () => Promise<void>;
};

const LOCAL = '127.0.0.1';
/** A browser holds up to six, a page that follows a search one more. */
const MOST_CONNECTIONS = 512;
const CHECK_EVERY_MS = 500;
/** How long answers may take to leave once the service is asked to stop. */
const STOP_WITHIN_MS = 10_000;
const LOOK_EVERY_MS = 50;

function serverFor(app: ReturnType<typeof createApp>, arrivalSeconds: number): Server {
  const arrivalMs = arrivalSeconds * 1000;
  const limits = {
    requestTimeout: arrivalMs,
    headersTimeout: Math.min(10_000, arrivalMs),
    keepAliveTimeout: 5_000,
    connectionsCheckingInterval: CHECK_EVERY_MS,
  };
  const server = createServer(limits, app);
  server.maxConnections = MOST_CONNECTIONS;
  return server;
}

function listening(server: Server, port: number, host: string): Promise<string> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen({ port, host }, () => {
      server.off('error', reject);
      const address = server.address();
      if (typeof address !== 'object' || address === null) reject(new Error('The server has no address'));
      else resolve(`http://${address.family === 'IPv6' ? `[${address.address}]` : address.address}:${address.port}`);
    });
  });
}

function closed(server: Server): Promise<void> {
  return new Promise((resolve) => {
    // A connection kept alive after its last answer would hold the server open.
    const look = setInterval(() => server.closeIdleConnections(), LOOK_EVERY_MS);
    const enough = setTimeout(() => server.closeAllConnections(), STOP_WITHIN_MS);
    server.close(() => {
      clearInterval(look);
      clearTimeout(enough);
      resolve();
    });
  });
}

/** Listens, and resolves once requests are answered. Rejects with the system's error when the address is not to be had. */
export async function startService(parts: ApiParts, settings: ServiceSettings): Promise<Service> {
  const { port, host = LOCAL, isOpenToAnyone = false, arrivalSeconds = 30, graceMs = 8_000 } = settings;
  if (!isLoopback(host) && !isOpenToAnyone) throw new Error(`${host} is open to other machines and nobody said it may be`);
  const server = serverFor(createApp(parts, { isOpenToAnyone: !isLoopback(host) }), arrivalSeconds);
  const url = await listening(server, port, host);
  return {
    url,
    stop: async () => {
      await parts.jobs.close(graceMs);
      await closed(server);
      await parts.jobs.end();
      await parts.store.close();
    },
  };
}
