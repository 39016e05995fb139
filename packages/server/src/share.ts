import { randomBytes, randomInt, timingSafeEqual } from 'node:crypto';
import { hostname, networkInterfaces } from 'node:os';

/** Letters and figures of which none is taken for another. */
const LETTERS = '23456789ABCDEFGHJKMNPQRSTVWXYZ';
/** So many wrong codes in so long a time, then nobody is heard until it is over. */
const TRIES = 10, TRIES_MS = 60_000;
const NAME = 'washline';

/** A code as it is told and typed: eight of thirty letters, some 39 bits. */
export function newCode(): string {
  const letters = Array.from({ length: 8 }, () => LETTERS[randomInt(LETTERS.length)] ?? '');
  return `${letters.slice(0, 4).join('')}-${letters.slice(4).join('')}`;
}

/** Addresses at which other machines of its networks reach this one: IPv4, in the order of the system. */
export function addressesOfHere(): string[] {
  return Object.values(networkInterfaces()).flat().flatMap((one) => (one === undefined || one.family !== 'IPv4' || one.internal ? [] : [one.address]));
}

/** Names that a shared server answers to besides this machine's own. */
export function sharedNames(): string[] { const own = hostname().toLowerCase(); return [...addressesOfHere(), own, `${own}.local`]; }

/** Does a request come from this machine itself? */
export function isHere(remote: string | undefined): boolean { return remote === undefined || /^(127\.|::1$|::ffff:127\.)/.test(remote); }

/** Who may come in from other machines: who has typed the code is known by a mark that is made anew at every start. */
export class Share {
  readonly code: string;
  private readonly mark = randomBytes(24).toString('base64url');
  private wrong: number[] = [];

  constructor(code: string = newCode()) { this.code = code; }

  knows(cookies: string | null): boolean {
    const own = (cookies ?? '').split(';').map((one) => one.trim()).find((one) => one.startsWith(`${NAME}=`))?.slice(NAME.length + 1) ?? '';
    return same(own, this.mark);
  }

  /** The code as somebody typed it: small letters and a missing dash do not matter. */
  enter(typed: string, now: number = Date.now()): 'in' | 'wrong' | 'wait' {
    this.wrong = this.wrong.filter((at) => now - at < TRIES_MS);
    if (this.wrong.length >= TRIES) return 'wait';
    if (same(plain(typed), plain(this.code))) return 'in';
    this.wrong.push(now);
    return 'wrong';
  }

  get cookie(): string { return `${NAME}=${this.mark}; Path=/; HttpOnly; SameSite=Strict`; }
}

const plain = (text: string): string => text.toUpperCase().replace(/[^0-9A-Z]/g, '');
/** Takes as long however much of it is right. */
function same(a: string, b: string): boolean {
  const one = Buffer.from(a), two = Buffer.from(b);
  return one.length === two.length && timingSafeEqual(one, two);
}
