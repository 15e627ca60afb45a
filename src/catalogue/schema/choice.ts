import * as z from 'zod';
import { $constructor, type $ZodUnionDef } from 'zod/v4/core';

/** Says which option a value means, or in a sentence why it means none. */
type Pick = (value: unknown) => number | string;

interface ChoiceDef extends $ZodUnionDef {
  pick: Pick;
}

const initUnion: (inst: z.ZodUnion, def: ChoiceDef) => asserts inst is z.ZodUnion = z.ZodUnion.init;

// From the core itself: by way of `z.core` a bundler takes the whole of zod, its languages too.
const Choice = $constructor<z.ZodUnion, ChoiceDef>('Choice', (inst, def) => {
  initUnion(inst, def);
  inst._zod.parse = (payload, context) => {
    const picked = def.pick(payload.value);
    if (typeof picked === 'number') return def.options[picked]._zod.run(payload, context);
    payload.issues.push({ code: 'custom', message: picked, input: payload.value, inst });
    return payload;
  };
});

/**
 * A union that knows from the look of a value which option is meant, so that a mistake within it is told as that
 * option tells it. A plain union can only say that nothing fitted. In JSON Schema it is an `anyOf`.
 */
export function choice<const Options extends readonly z.ZodType[]>(
  options: Options,
  pick: Pick,
): z.ZodUnion<Options> {
  return new Choice({ type: 'union', options, pick }) as unknown as z.ZodUnion<Options>;
}
