import type { Words } from './options.ts';

/** One headless command: what it takes, and what it prints. */
export interface Command {
  readonly usage: string;
  readonly allowed: readonly string[];
  readonly run: (words: Words) => string;
}

/** Options that say what the day's air is. */
export const DAY: readonly string[] = ['air-c', 'bell-air-c', 'humidity'];

/** Whether open holes hear each other; off unless asked for. */
export function neighbours(words: Words): { neighbours: boolean } {
  return { neighbours: words.options['neighbours'] === true };
}

/** A report as JSON. */
export function json(value: unknown): string {
  return JSON.stringify(value, null, 2);
}
