import { keyedHoles } from '../../documents/horn-document.ts';
import type { HornAndSetup } from '../../documents/to-acoustics.ts';
import { keyOf } from '../state/key-lengths.ts';
import { memoLast } from '../state/memo-last.ts';
import { noteLabel } from './note-names.ts';

/** One pad on the strip. */
export interface StripPad {
  readonly id: string;
  readonly number: number;
  readonly name: string;
  readonly padMm: number;
  readonly rests: 'open' | 'closed';
  /** `F4`, or empty until the physics has said */
  readonly vents: string;
  readonly edited: boolean;
}

/** Written notes by pad id, as the physics tells them. */
export type Vents = Readonly<Record<string, readonly string[]>>;

/** Every pad as it stands on the horn, mouthpiece first. It changes with edits and horns, not with the slider. */
export const makeKeyStrip = memoLast(
  (documents: HornAndSetup, changed: ReadonlySet<string>, vents: Vents | null): StripPad[] =>
    keyedHoles(documents.horn)
      .sort((a, b) => a.positionMm - b.positionMm)
      .map((k) => ({
        id: k.id,
        number: k.number,
        name: k.name,
        padMm: keyOf(documents, k.id).entry.padDiameterMm,
        rests: k.rests,
        vents: ventWords(vents, k.id),
        edited: changed.has(k.id),
      })),
);

/** `F4`, `F♯4, G4`, or empty. */
export function ventWords(vents: Vents | null, keyId: string): string {
  return (vents?.[keyId] ?? []).map(noteLabel).join(', ');
}
