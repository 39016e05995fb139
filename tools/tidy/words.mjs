import ts from 'typescript';
import { read, sources } from './files.mjs';

const ENOUGH = 4;

/** Text of four or more words in a literal: a sentence of some language. */
function isSentence(text) {
  return (text.match(/(?:^|\s)[\p{L}'’]{2,}(?=$|[\s.,;:!?])/gu) ?? []).length >= ENOUGH;
}

/** What is thrown is a fault of ours and never shown; its words are for us. */
function isThrown(node) {
  for (let at = node.parent; at; at = at.parent) {
    if (ts.isThrowStatement(at)) return true;
    if (ts.isBlock(at) || ts.isSourceFile(at)) return false;
  }
  return false;
}

/** Sentences among the literals of a source. */
export function sentencesIn(path, code) {
  const source = ts.createSourceFile(path, code, ts.ScriptTarget.ES2022, true);
  const found = [];
  const visit = (node) => {
    const text = ts.isStringLiteralLike(node) ? node.text : ts.isTemplateExpression(node) ? [node.head, ...node.templateSpans.map((span) => span.literal)].map((part) => part.text).join(' x ') : null;
    if (text !== null && isSentence(text) && !isThrown(node)) found.push(`${path}:${source.getLineAndCharacterOfPosition(node.getStart()).line + 1}: ${text.slice(0, 80)}`);
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

/** The engine speaks in codes, paths and numbers; sentences live in messages/. */
export function words() {
  return { name: 'no sentence of a language in the engine', problems: sources().filter((path) => path.startsWith('packages/engine/')).flatMap((path) => sentencesIn(path, read(path))) };
}
