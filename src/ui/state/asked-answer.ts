/** An answer asked of the physics, and what came of it. */
export interface AskedAnswer<T> {
  /** null before the first */
  readonly report: T | null;
  /** the horn the report is of */
  readonly hornId: string;
  /** counts what was asked for; the report is current when it answers the last */
  readonly asked: number;
  readonly answered: number;
  readonly problem: string | null;
}

/** Nothing asked yet. */
export function nothingAsked<T>(hornId: string): AskedAnswer<T> {
  return { report: null, hornId, asked: 0, answered: 0, problem: null };
}

// Each takes what is known and gives the next.

export function answerAsked<T>(known: AskedAnswer<T>, asked: number): AskedAnswer<T> {
  return { ...known, asked };
}

/** @param hornId the horn in hand */
export function answerArrived<T>(
  known: AskedAnswer<T>,
  answered: number,
  hornId: string,
  report: T,
): AskedAnswer<T> {
  return { ...known, answered, hornId, report, problem: null };
}

export function answerFailed<T>(known: AskedAnswer<T>, answered: number, problem: string): AskedAnswer<T> {
  return { ...known, answered, problem };
}

/** What came of asking: a report, or a sentence on why there is none. */
type Came<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly message: string };

/** @param hornId the horn in hand */
export function answerTaken<T>(
  known: AskedAnswer<T>,
  answered: number,
  hornId: string,
  came: Came<T>,
): AskedAnswer<T> {
  return came.ok
    ? answerArrived(known, answered, hornId, came.value)
    : answerFailed(known, answered, came.message);
}

/** Whether what an answer depends on is other than what it was asked with. */
export function differ(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length !== b.length || a.some((part, i) => part !== b[i]);
}

/** The report, where it is of the horn in hand, be it with older measurements. */
export function reportFor<T>({ report, hornId }: AskedAnswer<T>, inHand: string): T | null {
  return hornId === inHand ? report : null;
}

/** Whether something newer than the report was asked for. */
export function isWaiting<T>({ report, hornId, asked, answered }: AskedAnswer<T>, inHand: string): boolean {
  return report === null || hornId !== inHand || asked !== answered;
}
