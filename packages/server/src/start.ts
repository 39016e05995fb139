import { mkdir } from 'node:fs/promises';
import type { Server } from 'node:http';
import { serve } from '@hono/node-server';
import { makeApp } from './app.ts';
import type { Serving } from './serving.ts';
import { addressesOfHere } from './share.ts';

export interface StartOptions extends Serving {
  /** 0 takes a free one */
  readonly port: number;
  /** the address bound; this machine's own alone where none is given, every one of its own where it is shared */
  readonly bind?: string;
  /** the folder of specs, made where it is missing */
  readonly bookDir?: string;
}

export interface Started { readonly port: number; readonly address: string;
  /** where other machines of the network find it; empty where it is not shared */
  readonly shared: readonly string[];
  readonly close: () => Promise<void> }

/** Starts the server; rejects with the system's error (`EADDRINUSE`, `EACCES`) when the port cannot be had. */
export async function startServer(options: StartOptions): Promise<Started> {
  if (options.bookDir !== undefined) await mkdir(options.bookDir, { recursive: true });
  let port = options.port;
  const app = makeApp(options, () => port);
  return new Promise((resolve, reject) => {
    const server = serve({ fetch: app.fetch, port, hostname: options.bind ?? (options.share === undefined ? '127.0.0.1' : '0.0.0.0') }, (info) => {
      port = info.port;
      resolve({ port, address: `http://localhost:${port}`, shared: options.share === undefined ? [] : addressesOfHere().map((host) => `http://${host}:${port}`), close: () => close(server) });
    }) as Server;
    server.requestTimeout = 30_000;
    server.once('error', reject);
  });
}

function close(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });
}
