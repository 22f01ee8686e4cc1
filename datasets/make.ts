import { makeHorns } from './horns/make.ts';
import { makeSchemas } from './schemas/make.ts';

/** Remakes every dataset that a script of ours makes: `npm run datasets`. */
makeSchemas();
makeHorns();
