import { fileURLToPath } from 'node:url';

/** The file of a JSON Schema that the build has written; the program itself is a file in `dist/`, beside `schema/`. */
export function shippedSchema(name: 'layout' | 'engine'): string {
  return fileURLToPath(new URL(`../schema/${name}.json`, import.meta.url));
}
