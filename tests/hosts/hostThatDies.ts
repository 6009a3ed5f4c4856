import { fork } from 'node:child_process';

// Started by keeper.test.ts: a host that starts a keeper, hears from it, tells its process id and then stays until killed.
const [script = '', ...argv] = process.argv.slice(2);
const keeper = fork(script, argv, { serialization: 'advanced', execArgv: [] });
keeper.once('message', () => process.stdout.write(`${keeper.pid}\n`));
keeper.send({ id: 1, name: 'book.status', input: {} });
