/** Which room may import which. Direction: app <- db <- main; app <- renderer; nothing else. */
const only = (name, from, allowed, comment) => ({
  name, severity: 'error', comment,
  from: { path: from },
  to: { pathNot: allowed },
});
module.exports = {
  forbidden: [
    only('app-stands-alone', '^app/', ['^app/', '^node_modules/(zod|canonicalize|@noble/(hashes|curves)|papaparse)/'],
      'The core is pure: its own folders and a short list of pure libraries.'),
    only('db-knows-only-app', '^db/', ['^(db|app)/', '^node_modules/(better-sqlite3|@types/better-sqlite3|drizzle-orm|fflate|uuid)/', '^(node:)?(fs|fs/promises|path|crypto|os|zlib|url|util|buffer)$'],
      'The store may use the core and SQLite, never a process of the program.'),
    only('main-not-renderer', '^main/', ['^(main|app|db)/', '^node_modules/', '^assets/', '^(node:)?[a-z0-9_/]+$'],
      'The main process never reaches into the window.'),
    only('renderer-only-app', '^renderer/', ['^(renderer|app)/', '^node_modules/(?!electron/|better-sqlite3/|drizzle-orm/|pdfkit/)', '^assets/'],
      'The window knows the core and the contract; everything else goes through one door.'),
    { name: 'no-cycles', severity: 'error', from: {}, to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } } },
    { name: 'no-unresolved', severity: 'error', from: {}, to: { couldNotResolve: true, pathNot: ['\\?'] } },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.base.json' },
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'require', 'node', 'default', 'types'] },
  },
};
