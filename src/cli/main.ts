import { run } from './run.js';

// Not process.exit: it would cut what is still on its way into a pipe.
run(process.argv.slice(2)).then((status) => {
  process.exitCode = status;
});
