import type { OpenAPIHono } from '@hono/zod-openapi';
import { Health, ProblemDetails, Reading, ReadRequest, Unreadable } from './schemas.ts';

const json = (schema: typeof Health | typeof Reading | typeof ReadRequest) => ({ 'application/json': { schema } });
const problem = (schema: typeof ProblemDetails | typeof Unreadable) => ({ 'application/problem+json': { schema } });

/** The OpenAPI 3.1 document of what the server answers, from the schemas that check it. */
export function describe(app: OpenAPIHono, version: string): object {
  return app.getOpenAPI31Document({ openapi: '3.1.0', info: { title: 'Washline', version, description: 'Reads a mixed-drink spec and says what will be in the glass.' } });
}

/** Names the operations, so that the document lists them. */
export function nameOperations(app: OpenAPIHono): void {
  app.openAPIRegistry.registerPath({ method: 'get', path: '/api/health', summary: 'Whether the server answers, and what it keeps specs in', responses: { 200: { description: 'It answers', content: json(Health) } } });
  app.openAPIRegistry.registerPath({
    method: 'post', path: '/api/read', summary: 'Read a spec',
    request: { body: { required: true, content: json(ReadRequest) } },
    responses: {
      200: { description: 'The reading', content: json(Reading) },
      400: { description: 'Not a request to read', content: problem(ProblemDetails) },
      413: { description: 'More than 1 MB', content: problem(ProblemDetails) },
      415: { description: 'Not JSON', content: problem(ProblemDetails) },
      422: { description: 'The spec has problems; what could be read is in `reading`', content: problem(Unreadable) },
    },
  });
}
