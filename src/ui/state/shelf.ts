/** A horn that can be put on the bench, by its name. */
export interface ShelvedHorn {
  readonly id: string;
  readonly label: string;
}

/** So many horns beside those that come with the workbench are kept in the head's list: the last ones. */
export const LONGEST_SHELF = 20;

/** What of the head's list outlives the page: all but the horns that come with the workbench. */
export function keptShelf(shelf: readonly ShelvedHorn[], brought: readonly ShelvedHorn[]): ShelvedHorn[] {
  return shelf.filter(({ id }) => !brought.some((b) => b.id === id)).slice(-LONGEST_SHELF);
}

/** What was kept, as far as it can be read. */
export function readShelf(value: unknown): ShelvedHorn[] {
  if (!Array.isArray(value)) return [];
  return value.flatMap((entry: unknown): ShelvedHorn[] => {
    const { id, label } = (entry ?? {}) as { readonly id?: unknown; readonly label?: unknown };
    return typeof id === 'string' && typeof label === 'string' ? [{ id, label }] : [];
  });
}

/**
 * The head's list once the library is known: names as they are there, and no horn that is gone.
 *
 * @param stays ids that stay in any case: what comes with the workbench and what is on the bench
 */
export function shelfInLibrary(
  shelf: readonly ShelvedHorn[],
  library: readonly { readonly id: string; readonly name: string }[],
  stays: ReadonlySet<string>,
): ShelvedHorn[] {
  return shelf.flatMap((horn) => {
    if (stays.has(horn.id)) return [horn];
    const found = library.find(({ id }) => id === horn.id);
    return found === undefined ? [] : [{ id: horn.id, label: found.name }];
  });
}
