import ts from 'typescript';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../house/root.mjs';
import { read } from './files.mjs';

const programs = new Map();

function programOf(name) {
  if (!programs.has(name)) {
    const file = join(root, 'packages', name, 'tsconfig.json');
    const { config } = ts.readConfigFile(file, ts.sys.readFile);
    const parsed = ts.parseJsonConfigFileContent(config, ts.sys, join(root, 'packages', name));
    const entry = join(root, 'packages', name, 'src', 'index.ts');
    programs.set(name, ts.createProgram({ rootNames: [entry], options: { ...parsed.options, noEmit: true }, projectReferences: parsed.projectReferences ?? [] }));
  }
  return programs.get(name);
}

/** What a package's index exports: name, the declarations behind it, and one line that says its kind and type. */
export function publicSurface(name) {
  const program = programOf(name);
  const checker = program.getTypeChecker();
  const index = program.getSourceFile(join(root, 'packages', name, 'src', 'index.ts'));
  const symbol = index && checker.getSymbolAtLocation(index);
  if (!symbol) return [];
  return checker.getExportsOfModule(symbol).map((exported) => {
    const real = exported.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported;
    return { name: exported.name, declarations: real.declarations ?? [], line: lineOf(checker, exported.name, real) };
  }).sort((a, b) => (a.name < b.name ? -1 : 1));
}

function lineOf(checker, name, symbol) {
  const [declaration] = symbol.declarations ?? [];
  const flags = ts.TypeFormatFlags.NoTruncation | ts.TypeFormatFlags.UseAliasDefinedOutsideCurrentScope;
  if (declaration && (ts.isInterfaceDeclaration(declaration) || ts.isTypeAliasDeclaration(declaration))) return `${ts.isInterfaceDeclaration(declaration) ? 'interface' : 'type'} ${name}`;
  if (declaration && ts.isClassDeclaration(declaration)) return `class ${name}`;
  if (!declaration) return name;
  const type = checker.getTypeOfSymbolAtLocation(symbol, declaration);
  const text = checker.typeToString(type, undefined, flags).replaceAll(/import\("[^"]*"\)\./g, '');
  return `${ts.isFunctionDeclaration(declaration) ? 'function' : 'const'} ${name}: ${text.length > 400 ? `${text.slice(0, 400)}…` : text}`;
}

/** Packages whose index others use. */
export function surfacePackages() {
  return readdirSync(join(root, 'packages')).filter((name) => existsSync(join(root, 'packages', name, 'src', 'index.ts'))).sort();
}

export function surfaceText(name) {
  return `${publicSurface(name).map(({ line }) => line).join('\n')}\n`;
}

/** What each package exports stands in docs/surface, so that a change of it shows; `npm run surface` writes it anew. */
export function surface() {
  const problems = [];
  for (const name of surfacePackages()) {
    const path = `docs/surface/${name}.txt`;
    if (!existsSync(join(root, path))) { problems.push(`${path} is missing; npm run surface writes it`); continue; }
    const [written, now] = [new Set(read(path).split('\n')), new Set(surfaceText(name).split('\n'))];
    for (const line of now) if (!written.has(line)) problems.push(`${path}: new: ${line.slice(0, 160)}`);
    for (const line of written) if (!now.has(line)) problems.push(`${path}: gone: ${line.slice(0, 160)}`);
  }
  return { name: 'the public surface is the one written in docs/surface (npm run surface)', problems };
}
