import { readFile, realpath, stat } from 'node:fs/promises';
import { extname, join, sep } from 'node:path';
import { problemAnswer } from './problem.ts';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8', '.js': 'text/javascript; charset=utf-8', '.mjs': 'text/javascript; charset=utf-8', '.css': 'text/css; charset=utf-8',
  '.json': 'application/json', '.webmanifest': 'application/manifest+json', '.map': 'application/json', '.svg': 'image/svg+xml', '.png': 'image/png', '.ico': 'image/x-icon',
  '.webp': 'image/webp', '.woff2': 'font/woff2', '.ttf': 'font/ttf', '.wasm': 'application/wasm', '.txt': 'text/plain; charset=utf-8', '.drink': 'text/plain; charset=utf-8',
};

/** The file a path names inside a folder, links followed; null where there is none or it would lie outside. */
async function fileAt(folder: string, path: string): Promise<string | null> {
  let plain: string;
  try { plain = decodeURIComponent(path); } catch { return null; }
  if (plain.includes('\0') || plain.includes('\\') || plain.split('/').includes('..')) return null;
  try {
    const top = await realpath(folder);
    let file = await realpath(join(top, plain));
    if ((await stat(file)).isDirectory()) file = await realpath(join(file, 'index.html'));
    if (!file.startsWith(top + sep) || !(await stat(file)).isFile()) return null;
    return file;
  } catch {
    return null;
  }
}

/** Answers a GET or HEAD with a file of the built page. Names under `assets/` carry a hash and may be kept for good; all else is asked for anew. */
export async function fileAnswer(folder: string, request: Request): Promise<Response> {
  if (request.method !== 'GET' && request.method !== 'HEAD') return problemAnswer(405, 'Method not allowed', 'Files can only be read.', {}, { allow: 'GET, HEAD' });
  const path = new URL(request.url).pathname;
  const file = await fileAt(folder, path);
  if (file === null) return problemAnswer(404, 'Not found', path === '/' ? 'The page is not built here; `npm run build` makes it.' : 'There is nothing at this address.');
  const state = await stat(file);
  const tag = `"${state.size.toString(36)}-${Math.round(state.mtimeMs).toString(36)}"`;
  const headers = { 'content-type': TYPES[extname(file).toLowerCase()] ?? 'application/octet-stream', etag: tag, 'cache-control': path.startsWith('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache' };
  // packed on its way a file is the same, but not to the byte: weak tags (RFC 9110, 8.8.1)
  if (request.headers.get('if-none-match')?.replace(/^W\//, '') === tag) return new Response(null, { status: 304, headers });
  const bytes = request.method === 'HEAD' ? null : new Uint8Array(await readFile(file));
  return new Response(bytes, { headers: { ...headers, 'content-length': String(state.size) } });
}
