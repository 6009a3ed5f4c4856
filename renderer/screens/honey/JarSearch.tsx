import { useId, useRef, useState, type FormEvent } from 'react';
import { useLocation } from 'wouter';
import { lotOfJar } from '#shared/jarText.ts';
import { lotAddress } from '../../parts/lotAddress.ts';
import { words } from './words.ts';

const mostNear = 3;

/** From what stands on a jar to the page of its lot. */
export function JarSearch({ codes }: { readonly codes: readonly string[] }) {
  const [, go] = useLocation();
  const [typed, setTyped] = useState('');
  const [fault, setFault] = useState<string | null>(null);
  const field = useRef<HTMLInputElement>(null);
  const id = useId();
  const open = (event: FormEvent) => {
    event.preventDefault();
    // A lot may itself be called "Lot 5", as it stands on the jar.
    const names = [typed.trim(), lotOfJar(typed)];
    const asked = names[1] ?? '';
    const plain = (text: string) => text.toLowerCase().replaceAll(/\s+/g, ' ');
    const found = names.map((name) => codes.find((code) => plain(code) === plain(name))).find((code) => code !== undefined);
    if (found !== undefined) return go(lotAddress(found));
    setFault(asked === '' ? words.jarNeeded : words.jarUnknown(asked, codes.filter((code) => plain(code).includes(plain(asked))).slice(0, mostNear)));
    field.current?.focus();
  };
  return (
    <form className="honey-jar" aria-label={words.jarBack} onSubmit={open} noValidate>
      <h2>{words.jarBack}</h2>
      <div className="one-field">
        <div className="field">
          <label htmlFor={id}>{words.jarField}</label>
          <input
            ref={field}
            id={id}
            type="text"
            autoComplete="off"
            list={`${id}lots`}
            value={typed}
            aria-invalid={fault !== null}
            aria-describedby={`${id}-says`}
            onChange={(event) => {
              setTyped(event.target.value);
              setFault(null);
            }}
          />
          <datalist id={`${id}lots`}>
            {codes.slice(0, 200).map((code) => (
              <option key={code} value={code} />
            ))}
          </datalist>
        </div>
        <button type="submit">{words.jarGo}</button>
      </div>
      <p id={`${id}-says`} className={fault === null ? 'soft small' : 'field-fault'} role="status">
        {fault ?? words.jarHelp}
      </p>
    </form>
  );
}
