import tseslint from 'typescript-eslint';

export default tseslint.config(
  { ignores: ['dist', 'node_modules'] },
  ...tseslint.configs.recommended,
  {
    rules: {
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { ignoreRestSiblings: true }],
      '@typescript-eslint/no-non-null-assertion': 'off',
      'no-restricted-syntax': [
        'error',
        { selector: 'TSEnumDeclaration', message: 'no enums: use a union of words' },
      ],
      eqeqeq: 'error',
      'no-console': 'error',
    },
  },
  {
    files: ['src/acoustics/**', 'src/documents/**'],
    rules: {
      'no-restricted-globals': [
        'error',
        'Date',
        'performance',
        'localStorage',
        'document',
        'window',
        'process',
      ],
      'no-restricted-properties': ['error', { object: 'Math', property: 'random', message: 'pass a seed' }],
    },
  },
  { files: ['tests/**', 'datasets/**', 'src/command/**'], rules: { 'no-console': 'off' } },
);
