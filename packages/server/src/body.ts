/** The most a body may hold, in bytes. */
export const BODY_LIMIT = 1_000_000;

export type Body = { readonly kind: 'text'; readonly text: string } | { readonly kind: 'too long' } | { readonly kind: 'not text' };

/**
 * Reads a body as UTF-8 text and stops at the limit. A length announced beyond it is refused before a byte is read;
 * a body without a length is counted as it comes.
 */
export async function readBody(request: Request): Promise<Body> {
  const announced = request.headers.get('content-length');
  if (announced !== null && Number(announced) > BODY_LIMIT) return { kind: 'too long' };
  if (!request.body) return { kind: 'text', text: '' };
  const parts: Uint8Array[] = [];
  let length = 0;
  const reader = request.body.getReader();
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    length += value.byteLength;
    if (length > BODY_LIMIT) {
      // Not awaited: a sender that never stops must not hold the answer back.
      void reader.cancel().catch(() => undefined);
      return { kind: 'too long' };
    }
    parts.push(value);
  }
  try {
    return { kind: 'text', text: new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(parts)) };
  } catch {
    return { kind: 'not text' };
  }
}
