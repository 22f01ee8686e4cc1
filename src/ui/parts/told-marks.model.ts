import type { ToldPiece } from './reason-view.model.ts';

/** A piece of a sentence, and what of the next belongs on its line. */
export interface MarkedPiece {
  readonly piece: ToldPiece;
  /** `,`, `).`; empty where a space or nothing follows */
  readonly mark: string;
}

/** What no line may begin with. */
const MARKS = /^[,.;:!?)’”…]+/;

/** Gives every figure the marks that follow it; the same letters in the same order. */
export function withMarks(pieces: readonly ToldPiece[]): MarkedPiece[] {
  const markOf = (next: ToldPiece | undefined): string =>
    typeof next === 'string' ? (MARKS.exec(next)?.[0] ?? '') : '';
  return pieces.flatMap((piece, i): MarkedPiece[] => {
    if (typeof piece !== 'string') return [{ piece, mark: markOf(pieces[i + 1]) }];
    const rest = i === 0 ? piece : piece.slice(markOf(piece).length);
    return rest === '' ? [] : [{ piece: rest, mark: '' }];
  });
}
