/**
 * The arrows of the house, checked by machine. Every rule names what to do instead.
 *
 * Calculation folders of src-core stand in one order; each may use the ones before it.
 */
const ORDER = [
  'units',
  'records',
  'statistics',
  'drawdown',
  'dose',
  'screw',
  'tank',
  'water',
  'sanitize',
  'verify',
  'drift',
  'spend',
  'glass',
  'cautions',
  'worksheet',
  'explain',
  'documents',
  'contract',
  'services',
  'messages',
]

const downward = ORDER.map((folder, place) => ({
  name: `core-${folder}-looks-down`,
  severity: 'error',
  comment: `src-core/${folder} may use only the folders before it (${ORDER.slice(0, place).join(', ') || 'none'}): move what both need further down.`,
  from: { path: `^src-core/${folder}/` },
  // Types of results may be named from anywhere below: they are erased.
  to: {
    path: `^src-core/(${ORDER.slice(place + 1).join('|') || 'nothing'})/`,
    dependencyTypesNot: ['type-only'],
  },
}))

export default {
  forbidden: [
    ...downward,
    {
      name: 'core-is-pure',
      severity: 'error',
      comment:
        'src-core knows no host: take clock, ids, files and windows as ports, or move the code to src-main or src-renderer.',
      from: { path: '^src-core/' },
      to: { path: '^(src-main|src-renderer|tests)/' },
    },
    {
      name: 'core-has-four-libraries',
      severity: 'error',
      comment:
        'src-core uses decimal.js (units), zod (documents, contract) and the @stdlib distributions (statistics), nothing else.',
      from: { path: '^src-core/' },
      to: {
        dependencyTypes: ['npm', 'npm-dev', 'core'],
        pathNot: 'node_modules/(decimal\\.js|zod|@stdlib)/',
      },
    },
    {
      name: 'one-door-for-decimal',
      severity: 'error',
      comment: 'Import Decimal from src-core/units/decimal.ts: its settings stand there.',
      from: { pathNot: '^(src-core/units/decimal\\.ts|tests/)' },
      to: { path: 'node_modules/decimal\\.js' },
    },
    {
      name: 'one-door-for-zod',
      severity: 'error',
      comment:
        'Schemas live in src-core/documents and src-core/contract; the renderer only switches off code generation.',
      from: { pathNot: '^(src-core/(documents|contract)/|src-renderer/main\\.ts|src-main/|tests/)' },
      to: { path: 'node_modules/zod' },
    },
    {
      name: 'one-door-for-distributions',
      severity: 'error',
      comment: 'Use src-core/statistics: it checks the arguments the library does not.',
      from: { pathNot: '^(src-core/statistics/|tests/)' },
      to: { path: 'node_modules/@stdlib' },
    },
    {
      name: 'main-does-not-draw',
      severity: 'error',
      comment: 'src-main serves the built renderer as files; it imports none of it.',
      from: { path: '^src-main/' },
      to: { path: '^src-renderer/' },
    },
    {
      name: 'renderer-asks-by-contract',
      severity: 'error',
      comment: 'The renderer calls the host through its client; it imports no host code and no Node module.',
      from: { path: '^src-renderer/' },
      to: { path: '^(src-main/|node_modules/(electron|conf|electron-store)/)' },
    },
    {
      name: 'renderer-has-no-node',
      severity: 'error',
      comment: 'Node does not exist in the window: put the work behind a method of the contract.',
      from: { path: '^src-renderer/' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'charts-alone-draw-charts',
      severity: 'error',
      comment: 'chart.js is imported in src-renderer/charts only, so that it loads only where a chart is.',
      from: { path: '^src-renderer/', pathNot: '^src-renderer/charts/' },
      to: { path: 'node_modules/chart\\.js', dependencyTypesNot: ['type-only'] },
    },
    {
      name: 'electron-only-in-its-host',
      severity: 'error',
      comment: 'Importing electron or electron-store elsewhere would tie shared code to one host.',
      from: { path: '^src-main/', pathNot: '^src-main/(electron|preload)/' },
      to: { path: '(^|node_modules/)(electron|electron-store)/|^electron$' },
    },
    {
      name: 'hosts-do-not-mix',
      severity: 'error',
      comment: 'The two hosts share src-main/dispatch.ts, compose.ts and storage, nothing of each other.',
      from: { path: '^src-main/electron/' },
      to: { path: '^src-main/local-host/' },
    },
    {
      name: 'local-host-without-electron',
      severity: 'error',
      comment: 'The two hosts share src-main/dispatch.ts, compose.ts and storage, nothing of each other.',
      from: { path: '^src-main/local-host/' },
      to: { path: '^src-main/electron/' },
    },
    {
      name: 'no-circles',
      severity: 'error',
      comment: 'Take the part both need into a file of its own.',
      from: {},
      to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'src-main/tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'default', 'types'],
      extensions: ['.ts', '.js', '.svelte', '.json'],
    },
  },
}
