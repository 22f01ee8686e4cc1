import type { ReadOutcome } from './schema-parts.ts';

/** The longest text read as a document, in characters: a library of 500 horns with ten setups each fits. */
export const LONGEST_TEXT = 40_000_000;

/** How deep lists and groups may lie in one another; our own documents need nine. */
export const DEEPEST = 40;

/**
 * Reads JSON with care: a text too long or too deeply nested is refused before it is parsed.
 *
 * @param text with or without a byte-order mark
 */
export function readJsonText(text: string): ReadOutcome<unknown> {
  if (text.length > LONGEST_TEXT) {
    const millions = (text.length / 1e6).toFixed(0);
    return refuse(
      'size',
      `the file is too long: ${millions} million characters; expected at most ${LONGEST_TEXT / 1e6} million`,
    );
  }
  if (isDeep(text)) {
    return refuse(
      'depth',
      `the file is nested too deeply; expected at most ${DEEPEST} lists or groups in one another`,
    );
  }
  try {
    return { ok: true, value: JSON.parse(text.replace(/^\uFEFF/, '')) as unknown };
  } catch (error) {
    return refuse('json', `the file is not JSON: ${(error as Error).message}`);
  }
}

function refuse(code: string, message: string): ReadOutcome<never> {
  return { ok: false, issues: [{ path: '', code, message }] };
}

/** Whether brackets outside of texts lie deeper than {@link DEEPEST}. */
function isDeep(text: string): boolean {
  let depth = 0;
  let inText = false;
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i);
    if (inText) {
      if (c === BACKSLASH) i++;
      else if (c === QUOTE) inText = false;
    } else if (c === QUOTE) inText = true;
    else if (c === BRACKET || c === BRACE) {
      if (++depth > DEEPEST) return true;
    } else if (c === BRACKET + 2 || c === BRACE + 2) depth--;
  }
  return false;
}

const QUOTE = 0x22;
const BACKSLASH = 0x5c;
const BRACKET = 0x5b;
const BRACE = 0x7b;
