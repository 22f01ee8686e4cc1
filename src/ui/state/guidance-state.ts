/** How much of the day’s path is shown. */
export type PathFold = 'line' | 'open' | 'away';

/** What guides a person round the bench; nothing of it belongs to a horn. */
export interface GuidanceState {
  readonly fold: PathFold;
  /** the card of the story that is shown, from 0; null outside the story */
  readonly card: number | null;
  /** whether the browser may clear its library; null while that is not known */
  readonly mayBeCleared: boolean | null;
}
