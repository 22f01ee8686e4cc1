/** A fingering's id as the trade writes it: `Bb5 one-and-one` → `B♭5 one-and-one`; in a sentence likewise. */
export function noteLabel(id: string): string {
  return id.replace(/\b([A-G])b(?=\d|\b)/g, '$1♭').replace(/([A-G])#/g, '$1♯');
}
