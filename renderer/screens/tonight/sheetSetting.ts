import { standardMarks, type Marks } from '#shared/roundMarks.ts';
import type { MassUnit } from '#shared/units.ts';

/** What the reading of a sheet depends on beside what is typed: the person's marks and the book's unit. */
export interface SheetSetting {
  readonly marks: Marks;
  readonly massUnit: MassUnit;
}

export const plainSetting: SheetSetting = { marks: standardMarks, massUnit: 'lb' };
