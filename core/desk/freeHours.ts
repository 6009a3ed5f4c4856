import type { WorkHours } from '#shared/contract/work.ts';
import type { Store } from '#core/book/store.ts';
import { lessBusy } from '#core/work/busyHours.ts';
import { readBusyCalendars } from './calendarPapers.ts';
import { readHours } from './workPapers.ts';

/** The hours that there are, less what people's calendars take of them. `own`: false while the house pattern is taken. */
export async function readFreeHours(store: Store): Promise<{ hours: WorkHours; own: boolean }> {
  const { hours, own } = await readHours(store);
  return { hours: lessBusy(hours, await readBusyCalendars(store)), own };
}
