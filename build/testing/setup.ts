import { configureGlobal } from 'fast-check';
import { inject } from 'vitest';

configureGlobal({ seed: inject('seed') });
