import { lines } from '../lines/lines.ts';

/** A point after these ends no sentence. */
const SHORT = /(?:^|[\s(\d])(?:oz|fl|tsp|tbsp|tbs|bsp|approx|ca|ml|cl|lb|pt|qt|no|min|sec|sek|std|stk|tl|el|bl|z\.?\s?b|d\.?\s?h|bzw|evtl|max|vol|dr|st|mr|mrs)\.$/i;

/** The sentences of a line, their full stops off. */
export function sentencesOf(line: string): string[] {
  const out: string[] = [];
  let from = 0;
  for (const match of line.matchAll(/(?<!\.)[.!;](?!\.)["”]?\s+(?=[\p{L}\d½⅓⅔¼¾⅛])/gu)) {
    const end = match.index + match[0].trimEnd().length, said = line.slice(from, end);
    if (SHORT.test(said) || (/\d\.$/.test(said) && /^\d/.test(line.slice(end).trimStart()))) continue;
    out.push(said);
    from = match.index + match[0].length;
  }
  out.push(line.slice(from));
  return out.map((one) => (SHORT.test(one) ? one : one.replace(/[\s.!;]+$/, ''))).filter((one) => one !== '');
}

const isMeasure = (text: string): boolean => { const read = lines(text)[0]; return read !== undefined && read.kind === 'measure' && read.ingredient !== null; };
const AMOUNT = /^(?:\d|[½⅓⅔¼¾⅛]|(?:an?|one|two|three|half|the|juice|eine?n?|zwei|drei|ein|saft|etwas)\s)/i;

/** The measures of a line that only lists them with commas, plus signs or "and"; the line itself, alone, where it does not. */
export function measuresOf(line: string): string[] {
  const parts = line.split(/\s*[,;+|/]\s+|\s+(?:and|und|&)\s+/).filter((one) => one !== '');
  if (parts.length < 2) return [line];
  const out: string[] = [];
  let at = 0;
  for (const part of parts) {
    const from = line.indexOf(part, at);
    at = from + part.length;
    if (AMOUNT.test(part) && isMeasure(part)) out.push(part);
    else if (out.length > 0 && !/^(?:shake|stir|strain|add|pour|top|garnish|serve|build|blend|muddle)\b/i.test(part)) { const last = out.pop() ?? ''; out.push(line.slice(line.lastIndexOf(last, from), at)); }
    else return [line];
  }
  return out.length > 1 && out.every(isMeasure) ? out : [line];
}

const EVERYTHING = String.raw`(?:all (?:of )?(?:the )?(?:other )?(?:liquid )?ingredients|(?:the )?ingredients|everything|all)`, VESSEL = String.raw`(?:(?:cocktail |boston )?shaker(?: tin)?|(?:mixing|stirring) glass|(?:shaking )?tin|blender|jug|pitcher)`;
const ALLE = String.raw`(?:alle (?:übrigen |flüssigen )?zutaten|alles|die zutaten)`, GEFÄSS = String.raw`(?:(?:cocktail)?shaker|rührglas|mixer|mixbecher|becher)`;
const ICE = String.raw`(?:,? (?:with|over|and|filled with|full of|half[- ]filled with|together with)(?: plenty of| lots of| some)? (?:ice(?: cubes)?|cubed ice))`, EIS = String.raw`(?:,? (?:mit|auf|und)(?: reichlich| viel| etwas| genügend)? (?:eis|eiswürfeln?))`;
const ENGLISH = new RegExp(`^((?:add|combine|place|put|pour|tip|measure|mix) ${EVERYTHING}(?:,? except [^,.]+,?)? (?:in|into|to|together in)(?: an?| the| your)?(?: ice[- ]filled| large| cold| chilled)? ${VESSEL}${ICE}?)(?:(?:,)?(?: and then| and| then|,) (.+))?$`, 'i');
const DEUTSCH = new RegExp(`^(${ALLE}${EIS}? (?:in|im)(?: den| das| einen| einem| ein| dem)?(?: mit eis(?:würfeln)? gefüllten)? ${GEFÄSS}${EIS}?(?: geben| füllen| gießen)?)(?:(?:,)?(?: und dann| und| dann|,) (.+))?$`, 'i');

/** "Add all ingredients to a shaker with ice" does nothing a spec does not say by its order: it leads over to what follows. Null for any other sentence. */
export function leadOver(sentence: string): { readonly lead: string; readonly rest: string } | null {
  const match = ENGLISH.exec(sentence) ?? DEUTSCH.exec(sentence);
  return match === null ? null : { lead: match[1] ?? '', rest: (match[2] ?? '').trim() };
}
