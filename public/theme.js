/*
 * Sets the page's theme before anything is drawn, so that a dark bench never flashes white: what a person chose, or
 * what the machine prefers; paper is always light. The page tells of a choice by the event `vw-theme-choice`.
 */
(() => {
  const KEY = 'ventwright.theme';
  const dark = matchMedia('(prefers-color-scheme: dark)');
  const paper = matchMedia('print');
  const asked = (text) => (text === 'light' || text === 'dark' ? text : 'machine');
  const remembered = () => {
    try {
      return asked(localStorage.getItem(KEY));
    } catch {
      // A browser that keeps nothing is asked for its own preference.
      return 'machine';
    }
  };
  let choice = remembered();
  let printing = false;
  const show = () => {
    const theme = choice === 'machine' ? (dark.matches ? 'dark' : 'light') : choice;
    const { dataset } = document.documentElement;
    const shown = printing || paper.matches ? 'light' : theme;
    if (dataset.theme !== shown) dataset.theme = shown;
  };
  const take = (next) => {
    choice = next;
    show();
  };
  show();
  dark.addEventListener('change', show);
  paper.addEventListener('change', show);
  addEventListener('beforeprint', () => {
    printing = true;
    show();
  });
  addEventListener('afterprint', () => {
    printing = false;
    show();
  });
  addEventListener('vw-theme-choice', (event) => take(asked(event.detail)));
  // Another tab's choice holds here too.
  addEventListener('storage', (event) => {
    if (event.key === KEY || event.key === null) take(remembered());
  });
})();
