import * as z from 'zod';

// The schema library may compile checks with eval; the workbench runs under a policy that forbids it.
z.config({ jitless: true });

/** A number with a range, whose error sentence names field, value, unit and what was expected. */
export function quantity(field: string, low: number, high: number, unit: string): z.ZodNumber {
  const error = ({ input }: { input?: unknown }): string =>
    input === undefined
      ? `missing ${field}; expected ${low} to ${high} ${unit}`
      : `invalid ${field}: ${show(input)} ${unit}; expected ${low} to ${high} ${unit}`;
  return z.number({ error }).gte(low, { error }).lte(high, { error }).describe(`${field}, ${unit}`);
}

/** A text of reasonable length. */
export function text(field: string): z.ZodString {
  const error = ({ input }: { input?: unknown }): string =>
    input === undefined
      ? `missing ${field}; expected a text of 1 to 200 letters`
      : `invalid ${field}: ${show(input)}; expected a text of 1 to 200 letters`;
  return z.string({ error }).min(1, { error }).max(200, { error }).describe(field);
}

/** A day. */
export function day(field: string) {
  return z.iso.date({
    error: ({ input }) => `invalid ${field}: ${show(input)}; expected a day such as 2026-05-31`,
  });
}

/** The version a document must have; a newer one is told apart from a wrong one. */
export function documentVersion<const V extends number>(kind: string, version: V) {
  return z.literal(version, {
    error: ({ input }) =>
      typeof input === 'number' && input > version
        ? `this ${kind} was written by a newer Ventwright, in version ${input}; this one reads up to version ${version}`
        : `invalid ${kind} version: ${show(input)}; expected ${version}`,
  });
}

/** One of a few words. */
export function choice<const T extends readonly [string, ...string[]]>(field: string, words: T) {
  return z
    .enum(words, {
      error: ({ input }) =>
        `invalid ${field}: ${show(input)}; expected ${words.map((w) => `"${w}"`).join(' or ')}`,
    })
    .describe(field);
}

/** Shows a value in a sentence, cut short. */
export function show(input: unknown): string {
  // A number that was reckoned is told without its dust.
  const told = typeof input === 'number' ? Number(input.toPrecision(6)) : input;
  const raw = JSON.stringify(told) ?? String(told);
  return raw.length > 60 ? `${raw.slice(0, 57)}…` : raw;
}

/** One thing wrong with a document: where, which kind, and a sentence to act on. */
export interface DocumentIssue {
  readonly path: string;
  readonly code: string;
  readonly message: string;
}

/** A document read, or everything that is wrong with it. */
export type ReadOutcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly issues: readonly DocumentIssue[] };

/** Holds a value against a schema and lists every issue at once. */
export function readWith<S extends z.ZodType>(schema: S, input: unknown): ReadOutcome<z.output<S>> {
  const outcome = schema.safeParse(input);
  if (outcome.success) return { ok: true, value: outcome.data };
  return {
    ok: false,
    issues: outcome.error.issues.map((issue) => ({
      path: pathText(issue.path),
      code: issue.code,
      message: sentence(issue),
    })),
  };
}

function sentence(issue: z.core.$ZodIssue): string {
  if (issue.code === 'unrecognized_keys')
    return `unknown field ${issue.keys.map((k) => `"${k}"`).join(', ')}`;
  return issue.message;
}

function pathText(path: readonly PropertyKey[]): string {
  return path.reduce<string>(
    (out, part) =>
      typeof part === 'number' ? `${out}[${part}]` : out === '' ? String(part) : `${out}.${String(part)}`,
    '',
  );
}
