import type * as z from 'zod';
import { applianceSchema, branchSchema } from './schema/appliance.js';
import { checkValveSchema } from './schema/check-valve.js';
import { fittingSchema } from './schema/fitting.js';
import { hoseSchema } from './schema/hose.js';
import { nozzleSchema } from './schema/nozzle.js';
import { pipeSchema } from './schema/pipe.js';
import { pumpSchema } from './schema/pump.js';
import { typingSchema } from './schema/typing.js';
import { valveSchema } from './schema/valve.js';

/** What the catalogue holds, and the schema that a row of each kind and a layout's own mapping share. */
export const SCHEMAS = {
  hose: hoseSchema,
  pipe: pipeSchema,
  fitting: fittingSchema,
  valve: valveSchema,
  check_valve: checkValveSchema,
  appliance: applianceSchema,
  branch: branchSchema,
  nozzle: nozzleSchema,
  pump: pumpSchema,
  typing: typingSchema,
} as const;

export type Kind = keyof typeof SCHEMAS;
export type Model<K extends Kind> = z.infer<(typeof SCHEMAS)[K]>;

export const KINDS = Object.keys(SCHEMAS) as Kind[];

/** The rows of the data files as written there, by kind and id. */
export type CatalogueRows = Record<Kind, Record<string, unknown>>;
