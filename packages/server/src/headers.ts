const POLICY = [
  "default-src 'none'", "script-src 'self'", "style-src 'self'", "font-src 'self'", "img-src 'self' blob: data:", "connect-src 'self'", "worker-src 'self'",
  "manifest-src 'self'", "base-uri 'none'", "form-action 'none'", "frame-ancestors 'none'",
].join('; ');

/** What every answer carries, unless it says otherwise itself. No Strict-Transport-Security: this is plain http on one's own machine. */
const GUARDS: Readonly<Record<string, string>> = {
  'content-security-policy': POLICY,
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'DENY',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'camera=(), microphone=(), geolocation=(), payment=(), usb=(), screen-wake-lock=(self), clipboard-write=(self)',
};

export function guardAnswer(answer: Response): void {
  for (const [name, value] of Object.entries(GUARDS)) if (!answer.headers.has(name)) answer.headers.set(name, value);
}
