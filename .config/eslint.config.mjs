import js from '@eslint/js'
import svelte from 'eslint-plugin-svelte'
import globals from 'globals'
import ts from 'typescript-eslint'

const typed = [
  'src/**/*.ts',
  'src/**/*.svelte',
  'tests/**/*.ts',
  'tests/**/*.svelte',
  'vite.config.ts',
]

const pageGlobals = ['document', 'window', 'navigator', 'localStorage', 'indexedDB']

/** What a direction comes to is said in one place. */
const noDirection = {
  selector: 'BinaryExpression > Literal[value=/^(counter)?clockwise$/]',
  message: 'Ask loom/direction.ts which way the work runs.',
}

export default ts.config(
  { ignores: ['.build/**', 'seeds/**'] },
  { linterOptions: { reportUnusedDisableDirectives: 'error' } },
  js.configs.recommended,
  {
    files: ['.config/**'],
    languageOptions: { globals: globals.node },
  },
  {
    files: typed,
    extends: [ts.configs.recommendedTypeChecked],
    languageOptions: {
      globals: { ...globals.browser, ...globals.node },
      parserOptions: {
        projectService: true,
        extraFileExtensions: ['.svelte'],
      },
    },
    rules: {
      eqeqeq: 'error',
      'no-console': 'error',
      'prefer-const': 'error',
      '@typescript-eslint/consistent-type-imports': ['error', { fixStyle: 'inline-type-imports' }],
      '@typescript-eslint/no-non-null-assertion': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_' }],
      '@typescript-eslint/require-await': 'off',
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true },
      ],
    },
  },
  // After the TypeScript rules, since it sets another parser for .svelte files.
  svelte.configs.recommended,
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: {
      parserOptions: { parser: ts.parser },
    },
  },
  {
    files: ['src/**/*.ts'],
    ignores: ['src/loom/**'],
    rules: { 'no-restricted-syntax': ['error', noDirection] },
  },
  {
    files: ['**/*.svelte'],
    rules: {
      // Here generic components have no types; svelte-check, which knows them, looks after that.
      '@typescript-eslint/no-unsafe-argument': 'off',
      '@typescript-eslint/no-unsafe-assignment': 'off',
      '@typescript-eslint/no-unsafe-call': 'off',
      '@typescript-eslint/no-unsafe-member-access': 'off',
      '@typescript-eslint/no-unsafe-return': 'off',
      '@typescript-eslint/no-unnecessary-type-assertion': 'off',
      // Svelte's $props() and bindings need let.
      'prefer-const': 'off',
      'svelte/prefer-const': ['error', { excludedRunes: ['$props', '$derived'] }],
      'no-restricted-syntax': [
        'error',
        noDirection,
        {
          selector: 'SvelteAttribute[key.name="style"] > SvelteLiteral',
          message:
            'The page policy blocks written style attributes: use a class or a style: directive.',
        },
      ],
    },
  },
  {
    files: ['tests/**', 'src/cli/**'],
    rules: { 'no-console': 'off' },
  },
  {
    files: ['src/{loom,stitches,languages,pattern,checks,words,drawing,turning,booklet}/**'],
    ignores: ['src/booklet/pdf.ts'],
    rules: {
      'no-restricted-globals': [
        'error',
        ...pageGlobals.map((name) => ({
          name,
          message: 'This folder also runs without a page: take what is needed as an argument.',
        })),
      ],
    },
  },
)
