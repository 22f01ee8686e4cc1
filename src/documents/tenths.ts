/** A ± to a tenth, never rounded to nothing where it is something: `0.3`, `0.02`, `<0.01`. */
export function tenths(plusMinus: number): string {
  const text = plusMinus.toFixed(1);
  if (Number(text) !== 0 || plusMinus === 0) return text;
  const finer = plusMinus.toFixed(2);
  return Number(finer) === 0 ? '<0.01' : finer;
}
