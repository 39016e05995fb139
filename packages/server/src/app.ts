import { getConnInfo } from '@hono/node-server/conninfo';
import { OpenAPIHono } from '@hono/zod-openapi';
import { compress } from 'hono/compress';
import { readBody } from './body.ts';
import { doorAnswer } from './door.ts';
import { fileAnswer } from './files.ts';
import { refusal } from './guard.ts';
import { guardAnswer } from './headers.ts';
import { describe, nameOperations } from './openapi.ts';
import { problemAnswer } from './problem.ts';
import { ReadRequest } from './schemas.ts';
import type { Serving } from './serving.ts';
import { sharedNames } from './share.ts';

/** The answers of the server, without a port: requests in, responses out. `port` is what the Host must name. */
export function makeApp(serving: Serving, port: () => number): OpenAPIHono {
  const app = new OpenAPIHono();
  nameOperations(app);
  // a phone in the same network waits for what is sent, not for what is packed
  app.use('*', compress());
  app.use('*', async (context, next) => {
    const { share } = serving, { raw, path } = context.req;
    const refused = refusal(raw.headers, path, port(), share === undefined ? [] : sharedNames())
      ?? (share === undefined ? null : await doorAnswer(share, raw, path, getConnInfo(context).remote.address));
    if (refused) context.res = refused; else await next();
    guardAnswer(context.res);
  });
  app.get('/api/health', (context) => context.json({ ok: true, store: serving.store, version: serving.version }));
  app.post('/api/read', (context) => readAnswer(serving, context.req.raw));
  app.get('/api/openapi.json', (context) => context.json(describe(app, serving.version)));
  app.all('/api/health', () => problemAnswer(405, 'Method not allowed', 'Health is asked for with GET.', {}, { allow: 'GET' }));
  app.all('/api/read', () => problemAnswer(405, 'Method not allowed', 'A spec is read with POST.', {}, { allow: 'POST' }));
  app.all('/api/*', () => problemAnswer(404, 'Not found', 'There is no such operation; /api/openapi.json lists them.'));
  app.all('*', (context) => fileAnswer(serving.webDir, context.req.raw));
  app.onError((error) => {
    serving.onFault?.(error);
    return problemAnswer(500, 'A fault of Washline', 'Washline could not answer this request; the fault is its own.');
  });
  return app;
}

async function readAnswer(serving: Serving, request: Request): Promise<Response> {
  if (!/^application\/json\s*(;|$)/i.test(request.headers.get('content-type') ?? '')) return problemAnswer(415, 'Wrong type', 'Send the spec as application/json.');
  const body = await readBody(request);
  if (body.kind === 'too long') return problemAnswer(413, 'Too long', 'A body may hold at most 1 MB.', {}, { connection: 'close' });
  if (body.kind === 'not text') return problemAnswer(400, 'Not text', 'The body is not valid UTF-8.');
  let sent: unknown;
  try { sent = JSON.parse(body.text); } catch { return problemAnswer(400, 'Not JSON', 'The body is not JSON.'); }
  const asked = ReadRequest.safeParse(sent);
  if (!asked.success) {
    const issue = asked.error.issues[0];
    return problemAnswer(400, 'Wrong request', `The request is not {"spec", "variant"?, "bench"?}: ${issue?.path.join('.') || 'body'}: ${issue?.message ?? ''}.`);
  }
  const { spec, variant, bench } = asked.data;
  const { reading, problems } = await serving.read(spec, { ...(variant === undefined ? {} : { variant }), ...(bench === undefined ? {} : { bench }) });
  if (problems.length === 0 && reading !== null) return Response.json(reading, { headers: { 'cache-control': 'no-store' } });
  return problemAnswer(422, 'Not wholly read', `The spec has ${problems.length === 1 ? 'a problem' : `${problems.length} problems`}.`, { problems, ...(reading === null ? {} : { reading }) });
}
