import * as z from 'zod';
import { HORN_VERSION, hornSchema } from './horn-document.ts';
import { LIBRARY_VERSION, librarySchema } from './library-file.ts';
import { SETUP_VERSION, setupSchema } from './setup-document.ts';
import { STOCK_VERSION, stockSchema } from './stock-document.ts';
import { VISIT_VERSION, visitSchema } from './visit-document.ts';

/** The JSON Schemas of what this program writes, by file name. */
export function publishedSchemas(): Record<string, unknown> {
  return {
    [`horn-${HORN_VERSION}.schema.json`]: z.toJSONSchema(hornSchema),
    [`setup-${SETUP_VERSION}.schema.json`]: z.toJSONSchema(setupSchema),
    [`visit-${VISIT_VERSION}.schema.json`]: z.toJSONSchema(visitSchema),
    [`stock-${STOCK_VERSION}.schema.json`]: z.toJSONSchema(stockSchema),
    [`library-${LIBRARY_VERSION}.schema.json`]: z.toJSONSchema(librarySchema),
  };
}
