declare const PUMPYOKE_VERSION: string | undefined;

/** Set when the program is bundled. */
export const VERSION = typeof PUMPYOKE_VERSION === 'string' ? PUMPYOKE_VERSION : 'unbuilt';
