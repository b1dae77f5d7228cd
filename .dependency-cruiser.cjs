// Which folder may import what, as data. `npm run check` fails on a wrong import and prints the comment of the rule it broke.

const everyFolder = 'api|check|cli|compile|dough|draw|explain|model|questions|read|solver|store|web';

/** Folder (or file) of src -> what else of src it may import, and what to do instead of a wrong import. */
const arrows = {
  model: {
    may: [],
    comment:
      'model holds the words everybody shares and knows nobody. Move what you need into model, or move this code to the folder that needs both.',
  },
  dough: {
    may: ['model'],
    comment: "dough is the baker's arithmetic on model's words. Hand other values in as arguments.",
  },
  read: {
    may: ['model', 'dough'],
    comment:
      'read turns text into a scenario or a plan, or into errors. What to do with the result belongs in planning.ts, cli or api.',
  },
  check: {
    may: ['model', 'dough'],
    comment: 'check is the independent judge: it shares no code with the search. Count it again here, slowly and obviously.',
  },
  compile: {
    may: ['model', 'dough', 'solver'],
    comment: 'compile is the only folder that knows bread and solver. It must not ask the judge, read files or draw.',
  },
  solver: {
    may: [],
    comment: 'solver has never heard of bread. Say what you need in its neutral problem and let compile translate.',
  },
  explain: {
    may: ['model', 'check', 'dough'],
    comment: 'explain reads a finished plan and solves nothing. What needs a solve belongs in questions.',
  },
  draw: {
    may: ['model'],
    comment: 'draw is pure functions from a plan to SVG text. Put what it needs into the plan (src/model/plan.ts).',
  },
  'planning.ts': {
    may: ['model', 'dough', 'check', 'compile', 'solver', 'explain'],
    comment: 'planning.ts only wires: compile, solve, decode, check, explain. Reading, drawing and questions stand on top of it.',
  },
  questions: {
    may: ['model', 'dough', 'check', 'explain', 'planning.ts'],
    comment: 'questions asks planning.ts for plans. It does not reach past it into compile or solver.',
  },
  store: {
    may: ['model', 'read'],
    comment: 'store keeps scenarios and plans and does nothing else with them.',
  },
  web: {
    may: ['model', 'draw'],
    comment: 'web runs in the browser and asks api for everything else.',
  },
  api: {
    may: ['model', 'dough', 'read', 'check', 'explain', 'draw', 'planning.ts', 'questions', 'store', 'web'],
    comment:
      'api answers requests with what the other folders know. Only planning.ts starts a solve; cli and api do not know each other.',
  },
  cli: {
    may: [
      'model',
      'dough',
      'read',
      'check',
      'explain',
      'draw',
      'planning.ts',
      'questions',
      'store',
      'api',
      'solver/wakeThreads.ts',
    ],
    comment:
      'cli starts everything through planning.ts and questions, and wakes the threads of a search ahead. It does not reach past them into compile or solver.',
  },
};

/** Package -> the folders (or files) of src that may import it. A package that is not listed may not be imported at all. */
const packages = {
  'better-sqlite3': ['store/'],
  commander: ['cli/'],
  express: ['api/'],
  'express-rate-limit': ['api/safety/'],
  'fastest-levenshtein': ['read/'],
  helmet: ['api/'],
  'ical-generator': ['api/calendar[.]ts'],
  'javascript-lp-solver': ['solver/'],
  picocolors: ['cli/'],
  pino: ['api/'],
  'pino-http': ['api/telling/'],
  piscina: ['api/jobs/', 'store/openStoreThread[.]ts', 'store/storeThread[.]ts'],
  'prom-client': ['api/telling/'],
  'pure-rand': ['solver/', 'questions/howSure/'],
  rfc6902: ['read/'],
  'temporal-polyfill': ['model/clock[.]ts'],
  'write-file-atomic': ['cli/', 'store/'],
  yaml: ['read/'],
  zod: ['model/', 'read/', 'api/', 'store/', 'cli/'],
};

const outside = ['cli/', 'api/', 'store/'];
const outsideModules =
  'fs|fs/promises|child_process|cluster|dgram|http|http2|https|net|os|process|readline|tls|tty|timers|timers/promises|perf_hooks';

function pathOf(name) {
  return name.endsWith('.ts') ? `^src/${name.replace('.', '[.]')}$` : `^src/${name}/`;
}

const folderRules = Object.entries(arrows).map(([name, { may, comment }]) => ({
  name: `arrow-${name}`,
  comment,
  severity: 'error',
  from: { path: pathOf(name) },
  to: { path: '^src/', pathNot: [pathOf(name), ...may.map(pathOf)] },
}));

const packageRules = Object.entries(packages).map(([name, places]) => ({
  name: `package-${name}`,
  comment: `Only src/${places.join(' and src/')} may import ${name}. Use what they export, or give the package a wider place here and say why in docs/dependencies.md.`,
  severity: 'error',
  from: { path: '^src/', pathNot: places.map((place) => `^src/${place}`) },
  to: { path: `^node_modules/(@types/)?${name}/` },
}));

module.exports = {
  forbidden: [
    ...folderRules,
    ...packageRules,
    {
      name: 'package-unlisted',
      comment:
        'This package has no place yet. List it in .dependency-cruiser.cjs and in docs/dependencies.md, as a dependency and not a devDependency.',
      severity: 'error',
      from: { path: '^src/' },
      to: { path: '^node_modules/', pathNot: `^node_modules/(@types/)?(${Object.keys(packages).join('|')})/` },
    },
    {
      name: 'files-and-network',
      comment:
        'Files, clocks, processes and network live in cli, api and store. Take text, times and functions as arguments and let those folders hand them in.',
      severity: 'error',
      from: { path: '^src/', pathNot: outside.map((place) => `^src/${place}`) },
      to: { path: `^(node:)?(${outsideModules})$` },
    },
    {
      name: 'unknown-folder',
      comment: 'A new folder of src needs its arrows in .dependency-cruiser.cjs and a line in DEVELOPERS.md.',
      severity: 'error',
      from: { path: '^src/', pathNot: [`^src/(${everyFolder})/`, '^src/planning[.]ts$'] },
      to: {},
    },
    {
      name: 'out-of-the-house',
      comment: 'src is what is shipped. It does not import tests, scripts, scenarios or docs.',
      severity: 'error',
      from: { path: '^src/' },
      to: { path: '^(tests|scripts|scenarios|docs|benchmarks)/' },
    },
    {
      name: 'circle',
      comment: 'These files import each other in a circle. Move what both need into a file of its own.',
      severity: 'error',
      from: { path: '^src/' },
      to: { circular: true },
    },
    {
      name: 'not-found',
      comment: 'The imported file or package does not exist. Relative imports end in .ts.',
      severity: 'error',
      from: { path: '^src/' },
      to: { couldNotResolve: true },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    // Imports of types count: a folder that needs another's types knows that folder.
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    // Packages say in their `exports` where their files are.
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'node', 'default', 'types'] },
  },
};
