/** The first sentence of a message, without its full stop where more follows, and the rest. */
export function firstSentence(message: string): { readonly head: string; readonly rest: string } {
  const found = /^(.+?[.!?;:])\s+(?=\S)/.exec(message);
  if (found?.[1] === undefined) return { head: message, rest: '' };
  const head = found[1].replace(/[;:]$/, '.');
  return { head, rest: message.slice(found[0].length) };
}
