import { makeParts } from './making/makeParts.ts';

// The pages and the program that ships, from scratch.
await makeParts(['renderer', 'electron'], { always: true, say: (line) => console.log(line) });
