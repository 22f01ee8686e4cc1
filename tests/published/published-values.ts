import { readFileSync } from 'node:fs';

/** What every published file says of itself. */
export interface PublishedFile {
  readonly source: string;
  readonly standing: 'from a published source' | 'from memory, confirmed' | 'from memory, unconfirmed';
  readonly units: Readonly<Record<string, string>>;
}

/** Reads a file of published values, as in `cramer-1993/sound-speed`. */
export function published<T>(name: string): T & PublishedFile {
  const path = new URL(`../../datasets/published/${name}.json`, import.meta.url);
  return JSON.parse(readFileSync(path, 'utf8')) as T & PublishedFile;
}
