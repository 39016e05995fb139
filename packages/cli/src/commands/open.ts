import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { refuse } from '../problems.ts';
import { loadReader } from '../reader.ts';
import { say } from '../sentences.ts';
import { VERSION } from '../version.ts';
import { EXIT, type World } from '../world.ts';
import { ROOT } from '../root.ts';

export interface OpenFlags { readonly json: boolean; readonly color: boolean; readonly port?: string; readonly book?: string; readonly share: boolean }

const DEFAULT_PORT = 4780;
const TRIES = 20;

/** `washline open`: serves the page until it is interrupted. */
export async function open(world: World, flags: OpenFlags): Promise<number> {
  if (flags.book !== undefined && /^\w+:\/\//.test(flags.book)) return refuse(world, flags.json, { code: 'book-missing', message: say('open.book', { book: flags.book }) });
  const written = flags.port ?? (world.env['PORT'] || undefined);
  if (written !== undefined && !(/^\d{1,5}$/.test(written) && Number(written) <= 65535)) return refuse(world, flags.json, { code: 'port-wrong', message: say('open.port', { port: written }) });
  const webDir = fileURLToPath(new URL('packages/web/dist', ROOT));
  const [{ Share, startServer }, readText] = await Promise.all([import('@washline/server'), loadReader()]);
  const share = flags.share ? new Share() : undefined;
  const first = written === undefined ? DEFAULT_PORT : Number(written);
  for (let port = first; ; port += 1) {
    try {
      const server = await startServer({
        port, webDir, store: 'folder', version: VERSION, read: (text, options) => readText(text, options), onFault: (error) => { world.stderr.write(`${say('open.fault', { what: error.message.split('\n')[0] ?? '' })}\n`); },
        ...(flags.book === undefined ? {} : { bookDir: flags.book }), ...(share === undefined ? {} : { share }),
      });
      if (flags.json) world.stdout.write(`${JSON.stringify({ address: server.address, port: server.port, ...(share === undefined ? {} : { shared: server.shared, code: share.code }) })}\n`);
      else {
        if (!existsSync(webDir)) world.stderr.write(`${say('open.unbuilt')}\n`);
        world.stdout.write(`${say('open.address', { address: server.address })}\n`);
        if (share !== undefined) world.stdout.write(`${server.shared.length === 0 ? say('open.alone') : `${say('open.shared', { addresses: server.shared.join(', '), code: share.code })}\n${say('open.plain')}`}\n`);
        world.stdout.write(`${say('open.end')}\n`);
      }
      await interrupted();
      await server.close();
      return EXIT.done;
    } catch (error) {
      const code = (error as NodeJS.ErrnoException).code;
      if (code === 'EADDRINUSE' && written === undefined && port < first + TRIES) continue;
      if (code === 'EADDRINUSE') return refuse(world, flags.json, { code: 'port-taken', message: say('open.taken', { port }) });
      if (code === 'EACCES') return refuse(world, flags.json, { code: 'port-forbidden', message: say('open.forbidden', { port }) });
      if (code === 'EEXIST' || code === 'ENOTDIR') return refuse(world, flags.json, { code: 'book-wrong', message: say('open.nofolder', { book: flags.book ?? '' }) });
      throw error;
    }
  }
}

function interrupted(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve());
  });
}
