/** One answer of RFC 9457: `application/problem+json`, `about:blank` types, a sentence as its detail. */
export function problemAnswer(status: number, title: string, detail: string, more: Readonly<Record<string, unknown>> = {}, headers: Readonly<Record<string, string>> = {}): Response {
  const body = { type: 'about:blank', title, status, detail, ...more };
  return new Response(JSON.stringify(body), { status, headers: { 'content-type': 'application/problem+json', 'cache-control': 'no-store', ...headers } });
}
