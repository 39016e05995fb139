import { readBody } from './body.ts';
import { problemAnswer } from './problem.ts';
import { isHere, type Share } from './share.ts';

const WORDS = {
  en: { ask: 'The code that stands where Washline was started', enter: 'open', wrong: 'That is not the code.', wait: 'Too many wrong codes; try again in a minute.' },
  de: { ask: 'Der Code, der dort steht, wo Washline gestartet wurde', enter: 'öffnen', wrong: 'Das ist nicht der Code.', wait: 'Zu viele falsche Codes; in einer Minute wieder.' },
} as const;

/** What a device from elsewhere is answered before it has given the code; null where it may go on. */
export async function doorAnswer(share: Share, request: Request, path: string, remote: string | undefined): Promise<Response | null> {
  if (isHere(remote) || share.knows(request.headers.get('cookie'))) return null;
  const words = /^de\b/i.test(request.headers.get('accept-language') ?? '') ? 'de' : 'en';
  if (request.method === 'POST' && path === '/code') {
    const body = await readBody(request), typed = body.kind === 'text' && body.text.length < 200 ? new URLSearchParams(body.text).get('code') ?? '' : '';
    const said = share.enter(typed);
    if (said === 'in') return new Response(null, { status: 303, headers: { location: '/', 'set-cookie': share.cookie, 'cache-control': 'no-store' } });
    return page(words, said === 'wait' ? 429 : 401, WORDS[words][said]);
  }
  if (request.method === 'GET' && !path.startsWith('/api/') && (request.headers.get('accept') ?? '').includes('text/html')) return page(words, 401, '');
  return problemAnswer(401, 'Not let in', 'This server is shared: open its page on this device and type the code.');
}

/** A page of one field. It has no script and no style of its own: nothing of the real page is given before the code. */
function page(language: keyof typeof WORDS, status: number, said: string): Response {
  const { ask, enter } = WORDS[language];
  const html = `<!doctype html><html lang="${language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><meta name="color-scheme" content="light dark"><title>Washline</title></head><body><main><h1>Washline</h1>`
    + `<form method="post" action="/code"><p><label for="code">${ask}</label></p><p><input id="code" name="code" autocomplete="off" autocapitalize="characters" spellcheck="false" maxlength="20" required autofocus> <button>${enter}</button></p><p role="alert">${said}</p></form></main></body></html>`;
  return new Response(html, {
    status,
    // with no referrer at all a browser would not say that the form is this page's own
    headers: { 'content-type': 'text/html; charset=utf-8', 'cache-control': 'no-store', 'referrer-policy': 'same-origin', 'content-security-policy': "default-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'", ...(status === 429 ? { 'retry-after': '60' } : {}) },
  });
}
