// What a browser or a script may rely on, over real sockets. Statuses and headers: RFC 9110 (HTTP semantics), RFC 9457 (problem details),
// W3C Content Security Policy Level 3 (frame-ancestors), Fetch Metadata (Sec-Fetch-Site).
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { connect } from 'node:net';
import { networkInterfaces, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Share, startServer, type Started } from './index.ts';

const folder = mkdtempSync(join(tmpdir(), 'washline-server-'));
const webDir = join(folder, 'page');
let server: Started;

beforeAll(async () => {
  mkdirSync(join(webDir, 'assets'), { recursive: true });
  writeFileSync(join(webDir, 'index.html'), '<!doctype html><title>Washline</title>');
  writeFileSync(join(webDir, 'assets', 'main-1a2b.js'), 'export {};');
  writeFileSync(join(webDir, 'site.webmanifest'), '{}');
  writeFileSync(join(folder, 'secret.txt'), 'not for the page');
  symlinkSync(join(folder, 'secret.txt'), join(webDir, 'link.txt'));
  server = await startServer({
    port: 0, webDir, store: 'folder', version: '0.1.0', bookDir: join(folder, 'book'),
    read: (text, { variant, bench }) => {
      if (text === 'break') throw new Error('an inner matter');
      const reading = { drink: text, variant: variant ?? null, bench: bench ?? null };
      return text === 'odd' ? { reading, problems: [{ message: 'a number was not used', where: { line: 1, column: 2 } }] } : { reading, problems: [] };
    },
  });
});
afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true });
});

interface Answer { readonly status: number; readonly headers: Record<string, string | string[] | undefined>; readonly text: string }

/** One request as bytes say it, so that Host and path can be anything. */
function ask(method: string, path: string, headers: Record<string, string> = {}, body?: string | Buffer): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const sent = request({ host: '127.0.0.1', port: server.port, method, path, headers }, (answer) => {
      const parts: Buffer[] = [];
      answer.on('data', (part: Buffer) => parts.push(part));
      answer.on('end', () => resolve({ status: answer.statusCode ?? 0, headers: answer.headers, text: Buffer.concat(parts).toString('utf8') }));
      answer.on('error', reject);
    });
    sent.on('error', reject);
    sent.end(body);
  });
}
const json = { 'content-type': 'application/json' };
const read = (body: string | Buffer, headers: Record<string, string> = {}) => ask('POST', '/api/read', { ...json, ...headers }, body);

describe('health and read', () => {
  it('says that it answers, what it keeps specs in, and its version', async () => {
    const answer = await ask('GET', '/api/health');
    expect(answer.status).toBe(200);
    expect(JSON.parse(answer.text)).toEqual({ ok: true, store: 'folder', version: '0.1.0' });
  });
  it('hands spec, variant and bench to the reader and gives the reading back', async () => {
    const answer = await read(JSON.stringify({ spec: 'Daiquiri', variant: 'dry', bench: 'jigger: 30 ml' }));
    expect(answer.status).toBe(200);
    expect(JSON.parse(answer.text)).toEqual({ drink: 'Daiquiri', variant: 'dry', bench: 'jigger: 30 ml' });
  });
  it('answers 422 with the problems and what could be read', async () => {
    const answer = await read(JSON.stringify({ spec: 'odd' }));
    expect(answer.status).toBe(422);
    expect(answer.headers['content-type']).toBe('application/problem+json');
    expect(JSON.parse(answer.text)).toMatchObject({ status: 422, problems: [{ message: 'a number was not used', where: { line: 1, column: 2 } }], reading: { drink: 'odd' } });
  });
  it('describes both operations in OpenAPI 3.1', async () => {
    const document = JSON.parse((await ask('GET', '/api/openapi.json')).text);
    expect(document.openapi).toMatch(/^3\.1\./);
    expect(Object.keys(document.paths)).toEqual(['/api/health', '/api/read']);
    expect(document.components.schemas.ReadRequest.required).toEqual(['spec']);
  });
});

describe('what is refused', () => {
  it.each([
    ['not JSON', '{"spec":', 400], ['a list', '[]', 400], ['no spec', '{}', 400], ['a spec that is no text', '{"spec":1}', 400], ['nothing', '', 400],
    ['bytes that are no UTF-8', Buffer.from([0x7b, 0xff, 0xfe, 0x7d]), 400],
  ])('%s is answered as a problem with its own status', async (_name, body, status) => {
    const answer = await read(body);
    expect(answer.status).toBe(status);
    expect(answer.headers['content-type']).toBe('application/problem+json');
    expect(JSON.parse(answer.text)).toMatchObject({ type: 'about:blank', status, title: expect.any(String), detail: expect.any(String) });
  });
  it('another type than JSON', async () => { expect((await ask('POST', '/api/read', { 'content-type': 'text/plain' }, '{"spec":"x"}')).status).toBe(415); });
  it('an unknown operation, and a known one by another method', async () => {
    expect((await ask('GET', '/api/nothing')).status).toBe(404);
    const answer = await ask('GET', '/api/read');
    expect([answer.status, answer.headers.allow]).toEqual([405, 'POST']);
  });
  it('a fault inside is one sentence without its cause', async () => {
    const answer = await read(JSON.stringify({ spec: 'break' }));
    expect(answer.status).toBe(500);
    expect(answer.text).not.toMatch(/inner matter|\.ts|at /);
  });
  it('a body announced beyond 1 MB is refused before any of it is sent', async () => {
    const text = await new Promise<string>((resolve, reject) => {
      const socket = connect(server.port, '127.0.0.1', () => {
        socket.write(`POST /api/read HTTP/1.1\r\nHost: localhost:${server.port}\r\nContent-Type: application/json\r\nContent-Length: 5000000\r\n\r\n`);
      });
      let got = '';
      socket.on('data', (part) => { got += part.toString('utf8'); if (got.includes('\r\n\r\n')) { socket.destroy(); resolve(got); } });
      socket.on('error', reject);
    });
    expect(text).toMatch(/^HTTP\/1\.1 413 /);
  });
  it('a body without a length is counted and cut off beyond 1 MB', async () => {
    const text = await new Promise<string>((resolve, reject) => {
      let got = '';
      const socket = connect(server.port, '127.0.0.1', () => {
        socket.write(`POST /api/read HTTP/1.1\r\nHost: localhost:${server.port}\r\nContent-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\n`);
        const part = 'x'.repeat(50_000);
        for (let sent = 0; sent <= 1_000_000; sent += part.length) socket.write(`${part.length.toString(16)}\r\n${part}\r\n`);
      });
      socket.on('data', (part) => { got += part.toString('utf8'); if (got.includes('\r\n\r\n')) { socket.destroy(); resolve(got); } });
      socket.on('error', reject);
    });
    expect(text).toMatch(/^HTTP\/1\.1 413 /);
  });
  it('a body of just under 1 MB is read', async () => {
    const spec = 'a'.repeat(999_000);
    const answer = await read(JSON.stringify({ spec }));
    expect(answer.status).toBe(200);
    expect(JSON.parse(answer.text).drink).toHaveLength(999_000);
  });
});

describe('who may ask', () => {
  it.each(['localhost', '127.0.0.1'])('%s with the port is the server’s own name', async (name) => {
    expect((await ask('GET', '/api/health', { host: `${name}:${server.port}` })).status).toBe(200);
  });
  it.each(['evil.example', 'localhost', 'localhost:1', '127.0.0.1.evil.example', 'localhost.evil.example'])('a request for %s is refused', async (host) => {
    expect((await ask('GET', '/api/health', { host })).status).toBe(403);
    expect((await ask('GET', '/', { host })).status).toBe(403);
  });
  it('its own page may post, another may not', async () => {
    const body = JSON.stringify({ spec: 'Daiquiri' });
    expect((await read(body, { origin: `http://localhost:${server.port}` })).status).toBe(200);
    for (const origin of ['http://evil.example', 'null', `https://localhost:${server.port}`, 'http://localhost:1']) expect((await read(body, { origin })).status).toBe(403);
  });
  it('what another page fetches without an origin is refused too, a typed address is not', async () => {
    expect((await ask('GET', '/api/health', { 'sec-fetch-site': 'cross-site' })).status).toBe(403);
    expect((await ask('GET', '/api/health', { 'sec-fetch-site': 'none' })).status).toBe(200);
  });
});

describe('the page', () => {
  it.each([
    ['/', 'text/html; charset=utf-8'], ['/index.html', 'text/html; charset=utf-8'], ['/assets/main-1a2b.js', 'text/javascript; charset=utf-8'], ['/site.webmanifest', 'application/manifest+json'],
  ])('%s is served as %s', async (path, type) => {
    const answer = await ask('GET', path);
    expect([answer.status, answer.headers['content-type']]).toEqual([200, type]);
  });
  it('every answer carries the guards, and none asks for https', async () => {
    for (const path of ['/', '/api/health', '/nothing', '/api/nothing']) {
      const { headers } = await ask('GET', path);
      const policy = String(headers['content-security-policy']);
      expect(policy).toContain("frame-ancestors 'none'");
      expect(policy).not.toMatch(/unsafe-inline|unsafe-eval|\*/);
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(headers['referrer-policy']).toBe('no-referrer');
      expect(headers['permissions-policy']).toContain('camera=()');
      expect(headers['strict-transport-security']).toBeUndefined();
      expect(headers['access-control-allow-origin']).toBeUndefined();
    }
  });
  it.each(['/../secret.txt', '/..%2fsecret.txt', '/%2e%2e/secret.txt', '/assets/../../secret.txt', '/..%5csecret.txt', '/link.txt', '/%00', '/%', '//etc/passwd'])('%s gives nothing away', async (path) => {
    const answer = await ask('GET', path);
    expect(answer.text).not.toContain('not for the page');
    expect(answer.text).not.toContain('root:');
    expect(answer.status).toBe(404);
  });
  it('an unchanged file is not sent twice, HEAD sends none, other methods none', async () => {
    const first = await ask('GET', '/');
    expect((await ask('GET', '/', { 'if-none-match': String(first.headers.etag) })).status).toBe(304);
    const head = await ask('HEAD', '/');
    expect([head.status, head.text, head.headers['content-length']]).toEqual([200, '', String(first.text.length)]);
    expect((await ask('PUT', '/index.html', {}, 'x')).status).toBe(405);
  });
});

describe('what is sent', () => {
  it('is packed for who can unpack it, and is known again by a weak tag (RFC 9110)', async () => {
    writeFileSync(join(webDir, 'assets', 'long-3c4d.js'), `export const long = '${'x'.repeat(5000)}';`);
    const plain = await ask('GET', '/assets/long-3c4d.js'), packed = await ask('GET', '/assets/long-3c4d.js', { 'accept-encoding': 'gzip' });
    expect(plain.headers['content-encoding']).toBeUndefined();
    expect(packed.headers['content-encoding']).toBe('gzip');
    expect(packed.text.length).toBeLessThan(plain.text.length / 10);
    for (const tag of [plain.headers['etag'], packed.headers['etag']]) expect((await ask('GET', '/assets/long-3c4d.js', { 'if-none-match': String(tag), 'accept-encoding': 'gzip' })).status).toBe(304);
  });
});

describe('the port', () => {
  it('is named as localhost', () => { expect(server.address).toBe(`http://localhost:${server.port}`); });
  it.each(Object.values(networkInterfaces()).flat().filter((one) => one?.family === 'IPv4' && !one.internal).map((one) => one?.address ?? ''))('is not open at %s, where other machines reach this one', async (host) => {
    await expect(new Promise((resolve, reject) => { const socket = connect(server.port, host, () => { socket.destroy(); resolve('open'); }); socket.on('error', reject); })).rejects.toMatchObject({ code: 'ECONNREFUSED' });
  });
  it('that is taken rejects with the system’s word', async () => {
    await expect(startServer({ port: server.port, webDir, store: 'folder', version: '0', read: () => ({ reading: null, problems: [] }) })).rejects.toMatchObject({ code: 'EADDRINUSE' });
  });
});

describe('shared with a phone', () => {
  const hosts = Object.values(networkInterfaces()).flat().filter((one) => one?.family === 'IPv4' && !one.internal).map((one) => one?.address ?? '');
  const share = new Share('ABCD-2345');
  let open: Started;
  beforeAll(async () => { open = await startServer({ port: 0, webDir, store: 'folder', version: '0.1.0', share, read: (text) => ({ reading: { drink: text }, problems: [] }) }); });
  afterAll(() => open.close());
  /** A request by way of the network, as another machine's would come: from an address that is not this machine's loop. */
  const by = (host: string, method: string, path: string, headers: Record<string, string> = {}, body?: string): Promise<Answer> => new Promise((resolve, reject) => {
    const sent = request({ host, port: open.port, method, path, headers }, (answer) => {
      const parts: Buffer[] = [];
      answer.on('data', (part: Buffer) => parts.push(part));
      answer.on('end', () => resolve({ status: answer.statusCode ?? 0, headers: answer.headers, text: Buffer.concat(parts).toString('utf8') }));
    });
    sent.on('error', reject);
    sent.end(body);
  });
  const form = { 'content-type': 'application/x-www-form-urlencoded' };

  it('says where, and asks nothing of its own machine', async () => {
    expect(open.shared).toEqual(hosts.map((host) => `http://${host}:${open.port}`));
    expect((await by('127.0.0.1', 'GET', '/')).status).toBe(200);
  });
  it.runIf(hosts.length > 0)('gives another machine a page with one field, no file and no answer before the code', async () => {
    const host = hosts[0]!, page = await by(host, 'GET', '/', { accept: 'text/html', 'accept-language': 'de-DE' });
    expect(page.status).toBe(401);
    expect(page.text).toContain('name="code"');
    expect(page.text).toContain('lang="de"');
    expect(page.headers['content-security-policy']).toContain("form-action 'self'");
    expect(page.headers['x-frame-options']).toBe('DENY');
    for (const [method, path] of [['GET', '/assets/main-1a2b.js'], ['GET', '/api/health'], ['POST', '/api/read']] as const) {
      const answer = await by(host, method, path, { ...json }, method === 'POST' ? '{"spec":"x"}' : undefined);
      expect([path, answer.status, answer.headers['content-type']]).toEqual([path, 401, 'application/problem+json']);
    }
  });
  it.runIf(hosts.length > 0)('lets in whoever types the code, small letters or not, and by a mark that scripts cannot read', async () => {
    const host = hosts[0]!, wrong = await by(host, 'POST', '/code', form, 'code=AAAA-2222');
    expect([wrong.status, wrong.headers['set-cookie']]).toEqual([401, undefined]);
    expect(wrong.text).toContain('not the code');
    const right = await by(host, 'POST', '/code', form, 'code=abcd2345');
    expect([right.status, right.headers['location']]).toEqual([303, '/']);
    const [cookie = ''] = right.headers['set-cookie'] as string[];
    expect(cookie).toMatch(/^washline=[\w-]{32}; Path=\/; HttpOnly; SameSite=Strict$/);
    const known = { cookie: cookie.split(';')[0]! };
    expect((await by(host, 'GET', '/', known)).text).toContain('Washline');
    expect(JSON.parse((await by(host, 'POST', '/api/read', { ...json, ...known }, '{"spec":"x"}')).text)).toEqual({ drink: 'x' });
    expect((await by(host, 'GET', '/', { cookie: 'washline=x', accept: 'text/html' })).status).toBe(401);
  });
  it.runIf(hosts.length > 0)('answers to its own addresses only, and to no other page', async () => {
    expect((await by(hosts[0]!, 'GET', '/', { host: `example.com:${open.port}` })).status).toBe(403);
    expect((await by(hosts[0]!, 'POST', '/code', { ...form, origin: 'http://example.com' }, 'code=ABCD-2345')).status).toBe(403);
  });
  it('hears nobody for a minute after ten wrong codes', () => {
    const one = new Share('ABCD-2345');
    for (let i = 0; i < 10; i += 1) expect(one.enter('AAAA-AAAA', 1000 + i)).toBe('wrong');
    expect(one.enter('ABCD-2345', 2000)).toBe('wait');
    expect(one.enter('ABCD-2345', 61_100)).toBe('in');
  });
  it('makes a code of letters that are not taken for others, another every time', () => {
    const codes = Array.from({ length: 200 }, () => new Share().code);
    for (const code of codes) expect(code).toMatch(/^[2-9A-HJKMNP-TV-Z]{4}-[2-9A-HJKMNP-TV-Z]{4}$/);
    expect(new Set(codes).size).toBe(200);
  });
});
