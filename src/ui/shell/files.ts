import { LONGEST_TEXT } from '../../documents/json-text.ts';
import { fileTextParts } from '../state/file-text.ts';
import type { UnreadRecords } from '../state/library-records.ts';
import { decodedText } from '../state/text-decoding.ts';

/** The largest file looked into, bytes: the longest text, with some letters that take more than one. */
export const LARGEST_FILE = LONGEST_TEXT * 1.1;

/** A file's text, or why there is none. */
export type FileText =
  { readonly ok: true; readonly text: string } | { readonly ok: false; readonly message: string };

/** Reads a file a person chose; one too large is refused before it is read. */
export async function readFile(file: File): Promise<FileText> {
  if (file.size > LARGEST_FILE) {
    const [is, most] = [file.size / 1e6, LARGEST_FILE / 1e6].map((mb) => mb.toFixed(0));
    return { ok: false, message: `the file is too large: ${is} MB; expected at most ${most} MB` };
  }
  try {
    return { ok: true, text: decodedText(new Uint8Array(await file.arrayBuffer())) };
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return { ok: false, message: `the file could not be read: ${why}` };
  }
}

/** Gives a person a file. */
export function saveFile(name: string, parts: readonly string[], type: string): void {
  const url = URL.createObjectURL(new Blob([...parts], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // The browser has to have taken it up before it is let go.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** Gives a person records as a library file. @returns how many documents could not be written down */
export function saveRecords(name: string, records: UnreadRecords): number {
  const { parts, lost } = fileTextParts(records);
  saveFile(name, parts, 'application/json');
  return lost;
}
