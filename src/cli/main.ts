import { run } from './run.js';
import { endOnceWritten } from './terminal.js';

run(process.argv.slice(2)).then(endOnceWritten);
