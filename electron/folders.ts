import { join } from 'node:path';

/** What of the surroundings decides where things lie; passed in so that every case can be tried anywhere. */
export interface Surroundings {
  readonly environment: Readonly<Record<string, string | undefined>>;
  readonly platform: string;
  readonly home: string;
  /** The person's folder for documents, if there is one. */
  readonly documents: string | null;
}

/** Where books lie: `OUTYARD_FOLDER`, else Outyard among the documents, else Outyard in the home folder. */
export function booksFolder(around: Surroundings): string {
  return around.environment['OUTYARD_FOLDER'] || join(around.documents ?? around.home, 'Outyard');
}

/**
 * Where the program keeps what is its own (log, window profile): the platform's usual place, or below
 * `OUTYARD_FOLDER`, so that a trial folder holds everything of its run.
 */
export function dataFolder(around: Surroundings): string {
  const { environment, platform, home } = around;
  if (environment['OUTYARD_FOLDER']) return join(environment['OUTYARD_FOLDER'], 'program');
  if (platform === 'win32') return join(environment['LOCALAPPDATA'] || join(home, 'AppData', 'Local'), 'Outyard');
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Outyard');
  return join(environment['XDG_DATA_HOME'] || join(home, '.local', 'share'), 'outyard');
}
