declare const PUMPYOKE_VERSION: string | undefined;

/** Version of the program, set when it is bundled. */
export const VERSION = typeof PUMPYOKE_VERSION === 'string' ? PUMPYOKE_VERSION : 'unbuilt';
