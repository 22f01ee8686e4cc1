/** Light, dark, or whatever the machine is set to. */
export type ThemeChoice = 'light' | 'dark' | 'machine';

const KEY = 'ventwright.theme';

/** What `public/theme.js`, which runs before anything is drawn, was told last time. */
export function rememberedTheme(): ThemeChoice {
  try {
    const kept = localStorage.getItem(KEY);
    return kept === 'light' || kept === 'dark' ? kept : 'machine';
  } catch {
    // A browser that keeps nothing follows the machine.
    return 'machine';
  }
}

/** Shows the page so from now on, in this tab and the others, and the next time. */
export function chooseTheme(choice: ThemeChoice): void {
  try {
    localStorage.setItem(KEY, choice);
  } catch {
    // It holds until the page is closed.
  }
  dispatchEvent(new CustomEvent('vw-theme-choice', { detail: choice }));
}

/** Calls back whenever the page has changed between light and dark. @returns what ends it */
export function watchTheme(changed: () => void): () => void {
  const watch = new MutationObserver(changed);
  watch.observe(document.documentElement, { attributeFilter: ['data-theme'] });
  return () => watch.disconnect();
}
