import { writeFileSync } from 'node:fs';
import { publishedSchemas } from '../../src/documents/published-schemas.ts';

/** Writes the JSON Schemas of the stored documents beside this file. */
export function makeSchemas(): void {
  for (const [file, schema] of Object.entries(publishedSchemas())) {
    writeFileSync(new URL(file, import.meta.url), `${JSON.stringify(schema, null, 2)}\n`);
  }
}
