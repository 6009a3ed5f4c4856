import type { DeskClient, InputOf, OperationName, OutputOf } from '#shared/contract/contract.ts';
import type { Answer, Fault } from '#shared/faults.ts';
import { asOfDay, refusedWhileLooking } from './asOfDay.ts';

/**
 * The window's way to the desk: the bridge where there is one, else the loopback host that served this page.
 * Never throws: a desk that does not answer is a fault like any other. While another day is looked at, nothing that
 * enters or changes anything gets past here, whichever screen asks.
 */
export const desk: DeskClient = {
  async call<Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<Answer<OutputOf<Name>>> {
    const refused = refusedWhileLooking(name, asOfDay.day());
    if (refused !== null) return refused;
    try {
      const answer = window.outyard ? await window.outyard.call(name, input) : await post(name, input);
      // The keeper made the value from the contract's own schema; the window does not parse it a second time.
      return isAnswer(answer) ? (answer as Answer<OutputOf<Name>>) : silent();
    } catch {
      return silent();
    }
  },
};

async function post(name: string, input: unknown): Promise<unknown> {
  const response = await fetch(`/desk/${name}`, {
    method: 'POST',
    credentials: 'same-origin',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(input),
  });
  return response.json();
}

function isAnswer(answer: unknown): boolean {
  if (typeof answer !== 'object' || answer === null || !('ok' in answer)) return false;
  if (answer.ok === true) return 'value' in answer;
  return answer.ok === false && 'sentence' in answer && typeof answer.sentence === 'string';
}

function silent(): Fault {
  return {
    ok: false,
    code: 'defect',
    sentence: 'The book’s keeper does not answer. What was entered before is safe in the book.',
    mend: 'Try again; if it stays silent, close Outyard and start it again.',
  };
}
