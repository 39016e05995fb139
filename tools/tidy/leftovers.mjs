import { projectFiles, read } from './files.mjs';

const isText = (path) => !/\.(png|woff2|ico|ttf)$/.test(path);
// Written apart, so that this file does not hold what it looks for.
const LEFT = new RegExp(`\\b(${['TO' + 'DO', 'FIX' + 'ME', 'XX' + 'X', 'HA' + 'CK'].join('|')})\\b|\\b(?:it|test|describe|bench)\\.(?:only|skip|todo)\\(`);
const PLACES = new RegExp(`(?<![\\w.-])(?:${['/' + 'work/', '/' + 'home/[a-z]', '/' + 'Users/', '/' + 'root/', '[A-Z]:\\\\' + 'Users'].join('|')})`);

export const leftoverIn = (line) => LEFT.test(line);
export const placeIn = (line) => PLACES.test(line);

function linesWith(test, files) {
  return files.flatMap((path) => read(path).split('\n').flatMap((line, at) => (test(line) ? [`${path}:${at + 1}: ${line.trim().slice(0, 120)}`] : [])));
}

/** Nothing unfinished, no path of a machine, no registry's host. */
export function leftovers() {
  const text = projectFiles(isText);
  const code = text.filter((path) => /\.(tsx?|mjs|js)$/.test(path));
  const lock = read('package-lock.json').split('\n').flatMap((line, at) => (/"resolved": "(?!packages\/)/.test(line) ? [`package-lock.json:${at + 1}: ${line.trim().slice(0, 100)}`] : []));
  return [
    { name: 'nothing is left unfinished or switched off', problems: linesWith(leftoverIn, code) },
    { name: 'no path of a machine', problems: linesWith(placeIn, text.filter((path) => path !== 'package-lock.json')) },
    { name: 'no registry host in the lock file', problems: lock },
  ];
}
