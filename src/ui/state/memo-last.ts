/** Keeps the last answer of a pure function, for the same arguments. */
export function memoLast<A extends readonly unknown[], R>(work: (...args: A) => R): (...args: A) => R {
  let last: { args: A; value: R } | null = null;
  return (...args) => {
    if (last === null || last.args.some((arg, i) => arg !== args[i])) last = { args, value: work(...args) };
    return last.value;
  };
}
