import { lines, readText, textOfJson, toJson } from '@washline/spec';
import { tables } from '@washline/tables';

/** Numbers that JSON cannot say, and ranges that do not hold their value. */
function faults(value, at, found = []) {
  if (typeof value === 'number') { if (!Number.isFinite(value)) found.push(`${at} is ${value}`); return found; }
  if (typeof value !== 'object' || value === null) return found;
  const { low, high, value: mid } = value;
  if (typeof low === 'number' && typeof high === 'number' && low > high) found.push(`${at}: ${low} is above ${high}`);
  else if (typeof low === 'number' && typeof high === 'number' && typeof mid === 'number') {
    const slack = 1e-9 * Math.max(1, Math.abs(mid));
    if (mid < low - slack || mid > high + slack) found.push(`${at}: ${mid} is not within ${low} to ${high}`);
  }
  for (const key of Object.keys(value)) faults(value[key], `${at}.${key}`, found);
  return found;
}

/** Places and sentences of problems and findings. */
function said({ reading, problems }, text) {
  const found = [], count = text.split(/\r\n|\r|\n/).length + 1;
  for (const one of problems) {
    const { line, column } = one.where;
    if (!(line >= 1 && line <= count && column >= 1)) found.push(`${one.code} stands at ${line}:${column}`);
    if (typeof one.message !== 'string' || one.message.length < 8) found.push(`${one.code} says "${one.message}"`);
  }
  for (const one of reading?.findings ?? []) {
    if (typeof one.message !== 'string' || one.message.length < 8) found.push(`${one.code} says "${one.message}"`);
    for (const s of one.remedy?.splices ?? []) if (!(s.from >= 0 && s.from <= s.to && s.to <= text.length)) found.push(`${one.code}: a splice ${s.from} to ${s.to} outside the text`);
  }
  return found;
}

/** Time of the processor in ms, so that a busy machine is no finding. */
function spent() { const { user, system } = process.cpuUsage(); return (user + system) / 1000; }

/** Everything wrong with how one text is read, an empty list as it should be; and how long the reading took. Throws nothing. */
export function wrongWith(text) {
  const began = spent();
  let ms = NaN;
  try {
    const answer = readText(text, { tables });
    ms = spent() - began;
    const found = [...faults(answer.reading, 'reading'), ...faults(answer.document.sections, 'document'), ...faults(answer.problems, 'problems'), ...said(answer, text)];
    for (const variant of answer.document.variants.slice(0, 1)) found.push(...faults(readText(text, { tables, variant }).reading, `reading of ${variant}`));
    if (answer.reading.figures?.strength && answer.problems.length === 0) found.push(...faults(readText(text, { tables, why: 'strength' }).reading.why, 'why'));
    if (textOfJson(JSON.parse(JSON.stringify(toJson(answer.document)))) !== text) found.push('text, JSON, text is not lossless');
    for (const line of lines(text)) found.push(...faults(line, 'lines'));
    return { wrong: found.slice(0, 5), ms };
  } catch (error) {
    return { wrong: [`thrown: ${error instanceof Error ? (error.stack ?? error.message).split('\n').slice(0, 4).join(' | ') : String(error)}`], ms: Number.isNaN(ms) ? spent() - began : ms };
  }
}
