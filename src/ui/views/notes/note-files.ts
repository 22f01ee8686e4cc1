/** The notes as they were when the workbench was built, by name; they come in with this view’s code. */
export const NOTE_TEXTS: ReadonlyMap<string, string> = new Map(
  Object.entries(
    import.meta.glob<string>(
      ['../../../../notes/physics/*.md', '../../../../notes/sources.md', '../../../../notes/glossary.md'],
      { query: '?raw', import: 'default', eager: true },
    ),
  ).map(([path, text]) => [fileName(path).replace(/\.md$/, ''), text]),
);

/** Where the drawings of the notes are, by the file’s name. */
export const NOTE_PICTURES: ReadonlyMap<string, string> = new Map(
  Object.entries(
    import.meta.glob<string>('../../../../notes/physics/*.svg', {
      query: '?url',
      import: 'default',
      eager: true,
    }),
  ).map(([path, address]) => [fileName(path), address]),
);

function fileName(path: string): string {
  return path.split('/').pop()!;
}
