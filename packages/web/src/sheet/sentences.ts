/** The first sentence of a message and the rest, each beginning large. */
export function firstSentence(message: string): { readonly head: string; readonly rest: string } {
  const found = /^(.+?[.!?;:])\s+(?=\S)/.exec(message);
  if (found?.[1] === undefined) return { head: large(message), rest: '' };
  return { head: large(found[1].replace(/[;:]$/, '.')), rest: large(message.slice(found[0].length)) };
}

function large(text: string): string { return text.charAt(0).toUpperCase() + text.slice(1); }
