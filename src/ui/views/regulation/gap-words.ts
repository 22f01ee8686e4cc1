import type { LengthUnit } from '../../../documents/length-format.ts';
import { PAPER_MM } from '../../../documents/leak-report.ts';

const MM_PER_THOU = 0.0254;
/** Thinner than a hundredth of a paper is shut. */
const SHUT_PAPERS = 0.01;

/** A gap as the bench tells it: `2 papers (0.050 mm)`, `1.4 papers (1.4 thou)`, `shut`. */
export function gapWords(gapMm: number, unit: LengthUnit): string {
  const papers = papersOf(gapMm);
  if (papers < SHUT_PAPERS) return 'shut';
  return `${papersWords(papers)} (${fineLength(gapMm, unit)})`;
}

/** `1 paper`, `1.4 papers`, `0.3 paper`. */
export function papersWords(papers: number): string {
  const digits = papers < 0.095 ? papers.toFixed(2) : papers < 9.95 ? papers.toFixed(1) : papers.toFixed(0);
  const plain = digits.replace(/\.0$/, '');
  return `${plain} ${Number(plain) > 1 ? 'papers' : 'paper'}`;
}

/** How many cigarette papers fit, whichever side is open. */
export function papersOf(gapMm: number): number {
  return Math.abs(gapMm) / PAPER_MM;
}

/** A gap to the thousandth of a millimetre, or the tenth of a thousandth of an inch. */
export function fineLength(gapMm: number, unit: LengthUnit): string {
  const mm = Math.abs(gapMm);
  return unit === 'mm' ? `${mm.toFixed(3)} mm` : `${(mm / MM_PER_THOU).toFixed(1)} thou`;
}
