import type { LengthUnit } from '../../documents/length-format.ts';

const BENCH = 'ventwright.bench';
const UNIT = 'ventwright.unit';
const FILED = 'ventwright.filed';

/** The horn and visit that were last on the bench. */
export interface RememberedBench {
  readonly hornId: string;
  readonly visitId: string;
}

/** What the browser remembers between visits of the page; nothing where it refuses to. */
function remembered(name: string): string | null {
  try {
    return localStorage.getItem(name);
  } catch {
    // A browser that keeps nothing starts from the beginning: that is the answer, not a fault.
    return null;
  }
}

function remember(name: string, value: string): void {
  try {
    localStorage.setItem(name, value);
  } catch {
    // Only comfort is lost; the library tells whether horns are kept.
  }
}

export function rememberedBench(): RememberedBench | null {
  const [hornId, visitId] = remembered(BENCH)?.split('\n') ?? [];
  return hornId === undefined || visitId === undefined ? null : { hornId, visitId };
}

export function rememberBench({ hornId, visitId }: RememberedBench): void {
  remember(BENCH, `${hornId}\n${visitId}`);
}

export function rememberedUnit(): LengthUnit {
  return remembered(UNIT) === 'thou' ? 'thou' : 'mm';
}

export function rememberUnit(unit: LengthUnit): void {
  remember(UNIT, unit);
}

/** The day all horns last went into a file. */
export function rememberedFiling(): string | null {
  return remembered(FILED);
}

export function rememberFiling(day: string): void {
  remember(FILED, day);
}

/** Whether this browser may hold a library already; yes where it does not say. */
export async function mayHaveLibrary(): Promise<boolean> {
  try {
    const databases = await indexedDB.databases();
    return databases.some(({ name }) => name === 'ventwright');
  } catch {
    // Not every browser lists its databases: then the library itself tells.
    return true;
  }
}
