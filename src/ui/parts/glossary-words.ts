import text from '../../../notes/glossary.md?raw';
import { glossaryOf } from '../state/glossary.ts';

/** The glossary as it was when the workbench was built. */
export const GLOSSARY = glossaryOf(text);
