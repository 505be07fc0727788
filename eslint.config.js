import tseslint from 'typescript-eslint';
import reactHooks from 'eslint-plugin-react-hooks';

export default tseslint.config(
  { ignores: ['dist/**', 'node_modules/**', 'release/**', 'test-results/**', 'db/migrations/**'] },
  {
    files: ['**/*.ts', '**/*.tsx'],
    extends: [tseslint.configs.recommended],
    rules: {
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      '@typescript-eslint/no-non-null-assertion': 'off',
      eqeqeq: 'error',
      'max-lines': ['error', { max: 400 }],
      'no-console': 'error',
    },
  },
  {
    // The core gets its clock and its randomness from its callers: the same input gives the same bytes.
    files: ['app/**/*.ts'],
    rules: {
      'no-restricted-properties': ['error',
        { object: 'Math', property: 'random', message: 'Take a seeded generator as a parameter.' },
        { object: 'Date', property: 'now', message: 'Take the time as a parameter.' },
        { object: 'performance', property: 'now', message: 'Take the time as a parameter.' }],
      'no-restricted-syntax': ['error',
        { selector: "NewExpression[callee.name='Date'][arguments.length=0]", message: 'Take the time as a parameter.' }],
    },
  },
  {
    files: ['renderer/**/*.{ts,tsx}'],
    plugins: { 'react-hooks': reactHooks },
    rules: { 'react-hooks/rules-of-hooks': 'error', 'react-hooks/exhaustive-deps': 'error' },
  },
  { files: ['scripts/**', 'tests/**', 'main/cli/**'], rules: { 'no-console': 'off' } },
);
