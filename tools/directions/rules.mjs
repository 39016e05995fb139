// Which way imports go, with the reasons: the one list. Read by dependency-cruiser; a failing check prints the comment.

/** Packages from the ground up; each may take from those named. */
const TAKES = {
  engine: { from: [], why: 'the engine is pure: it takes from nobody, so that it runs anywhere' },
  spec: { from: ['engine'], why: 'text knows the engine, not the other way round' },
  tables: { from: ['engine'], why: 'tables are data in the engine’s types' },
  drawing: { from: ['engine'], why: 'a drawing is made of a Reading alone' },
  server: { from: ['engine', 'spec', 'tables', 'drawing'], why: 'the server stands on the reading, never on the command line' },
  cli: { from: ['engine', 'spec', 'tables', 'drawing', 'server'], why: 'the command line is the outermost package' },
  web: { from: ['engine', 'spec', 'tables', 'drawing'], why: 'the page runs without a server and never takes from one' },
};

/** The engine’s domains, top to bottom: a folder takes from those before it in the list. */
export const DOMAINS = [
  'document', 'provenance', 'units', 'numeric', 'matter', 'liquids', 'acids', 'larder', 'ice', 'gas', 'heat', 'texture', 'clarity',
  'glass', 'layers', 'keeping', 'program', 'preps', 'findings', 'reading', 'hands', 'label', 'batch', 'tasting', 'verify',
];

/** Pairs that go against the list: [taker, taken, reason]. */
const EXCUSED = [
  ['program', 'preps', 'compiling a recipe lists what its preps do; what preps are made of (content, context) lies in program'],
  ['program', 'findings', 'margins are probes of the program, so compiling seeds them'],
  ['findings', 'reading', 'a margin has its range and its place found as a figure has'],
];

const others = (name) => Object.keys(TAKES).filter((other) => other !== name && !TAKES[name].from.includes(other));

const packages = Object.keys(TAKES).filter((name) => others(name).length > 0).map((name) => ({
  name: `${name}-takes-only-what-it-may`,
  comment: TAKES[name].why,
  severity: 'error',
  from: { path: `^packages/${name}/src` },
  to: { path: `^packages/(${others(name).join('|')})/` },
}));

const domains = DOMAINS.map((name, index) => ({
  name: `engine-${name}-takes-from-above`,
  comment: `domains of the engine take from those before them: ${DOMAINS.join(', ')}`,
  severity: 'error',
  from: { path: `^packages/engine/src/${name}/`, pathNot: '\\.test\\.ts$' },
  to: {
    dependencyTypesNot: ['type-only'],
    path: `^packages/engine/src/(${DOMAINS.slice(index + 1).join('|') || '-'})/`,
    pathNot: ['/types\\.ts$', ...EXCUSED.filter(([taker]) => taker === name).map(([, taken]) => `^packages/engine/src/${taken}/`)],
  },
}));

const PURE = '^packages/(engine|spec|tables|drawing|web)/src';

export default {
  forbidden: [
    { name: 'no-ring', comment: 'modules that import each other in a ring cannot be understood one at a time', severity: 'error', from: {}, to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } } },
    { name: 'no-orphan', comment: 'a module nothing imports is not part of anything', severity: 'error', from: { orphan: true, pathNot: ['\\.test\\.tsx?$', '\\.d\\.ts$', '/index\\.ts$', '/types\\.ts$', '/main\\.tsx?$', 'vite-env', 'worker'] }, to: {} },
    { name: 'no-node-in-the-page', comment: 'engine, spec, tables, drawing and web run in a browser: no Node built-in', severity: 'error', from: { path: PURE, pathNot: '\\.test\\.tsx?$' }, to: { dependencyTypes: ['core'] } },
    { name: 'engine-stands-alone', comment: 'the engine has no run-time dependency', severity: 'error', from: { path: '^packages/engine/src', pathNot: '\\.test\\.ts$' }, to: { dependencyTypes: ['npm', 'npm-dev', 'npm-peer', 'npm-no-pkg', 'npm-unknown'] } },
    { name: 'resolvable', comment: 'an import that leads nowhere', severity: 'error', from: { pathNot: '\\.test\\.tsx?$' }, to: { couldNotResolve: true, pathNot: '^virtual:' } },
    ...packages,
    ...domains,
  ],
  options: {
    doNotFollow: { path: ['node_modules', '/dist/'] },
    exclude: { path: ['/dist/'] },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.base.json' },
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'default'] },
  },
};
