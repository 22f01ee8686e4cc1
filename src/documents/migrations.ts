/**
 * Older stored shapes, rewritten as today's. A migration only moves and names things; what comes out is read
 * and checked like any other document. Old samples are kept as tests.
 */

type Fields = Readonly<Record<string, unknown>>;

/** Whether this is a horn of version 1, which had its setup inside. */
export function isHorn1(input: unknown): input is Fields {
  return isFields(input) && input['kind'] === 'ventwright horn' && input['version'] === 1;
}

/** Horn version 1 → horn version 2 and setup version 2. Its numbers were typed in, so they count as measured. */
export function migrateHorn1(input: Fields): { readonly horn: Fields; readonly setup: unknown } {
  const { setup, ...built } = input;
  return { horn: asVersion2(built), setup: migrateSetup(setup) };
}

/** Setup version 1 → version 2; anything else is handed on as it is. */
export function migrateSetup(input: unknown): unknown {
  if (!isFields(input) || input['version'] !== 1) return input;
  return asVersion2(input);
}

function asVersion2(input: Fields): Fields {
  const next: Record<string, unknown> = { ...input, version: 2, origin: 'measured' };
  delete next['$schema'];
  return next;
}

function isFields(input: unknown): input is Fields {
  return typeof input === 'object' && input !== null && !Array.isArray(input);
}
