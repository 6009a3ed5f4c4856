import type { ReactNode } from 'react';
import { useAsOf } from '../desk/asOfDay.ts';
import { lookingId } from './AsOfBar.tsx';
import { dayText } from './format.ts';
import { words } from './words.ts';

/**
 * What enters or changes something: all of it rests while another day is looked at, and what was typed stays. The desk's
 * client refuses such a call anyway; this says so before anybody tries.
 */
export function Entering({ children }: { readonly children: ReactNode }) {
  const day = useAsOf();
  return (
    <fieldset
      role="presentation"
      className="entering"
      disabled={day !== null}
      {...(day === null ? {} : { title: words.notWhileLooking(dayText(day)), 'aria-describedby': lookingId })}
    >
      {children}
    </fieldset>
  );
}
