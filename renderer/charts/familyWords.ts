import type { QueenView } from '#shared/contract/journal.ts';
import type { Ending } from '#shared/contract/values.ts';
import { dayInWords, type Day } from '#shared/days.ts';

export const familyWords = {
  summer: (year: number) => `summer ${year}`,
  winter: 'winter',
  movedTo: (code: string) => `to ${code}`,
  moved: (day: Day, yard: string) => `${dayInWords(day)}: moved to ${yard}`,
  queen: (day: Day, queen: QueenView) =>
    `${dayInWords(day)}: queen ${[queen.colour === null ? 'of a year that is not known' : `${queen.colour} ${queen.year}`, queen.source].filter((part) => part !== null).join(', ')}`,
  ending: (how: Ending, causes: readonly string[], into: string | null): string => {
    switch (how) {
      case 'alive':
        return '';
      case 'lost':
        return causes.length === 0 ? 'lost' : `lost: ${causes.join('; ')}`;
      case 'combined':
        return into === null ? 'united' : `united into ${into}`;
      case 'given':
        return 'given away';
      case 'sold':
      case 'absconded':
        return how;
    }
  },
  alt: (lanes: number) => `Family lines of ${lanes} colonies: one lane each, time to the right. The same stands in the table.`,
} as const;
