import * as z from 'zod';

/**
 * zod writes and compiles code of its own for every schema, which pays from the tenth document on; one run reads one.
 * Schemas ask when they are made, so this has to run before the modules that make them.
 */
z.config({ jitless: true });
