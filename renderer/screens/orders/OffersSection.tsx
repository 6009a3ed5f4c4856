import { useState } from 'react';
import type { ListedOffer } from '#shared/contract/offers.ts';
import { useRead, useWrite } from '../../desk/useDesk.ts';
import { dayText, missing, money, number } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { useNotice } from '../../parts/Notice.tsx';
import { OfferForm } from './OfferForm.tsx';
import { deliveryText } from './SellerSection.tsx';
import { words } from './words.ts';

/** What sellers offer, entered and changed in place. */
export function OffersSection() {
  const { data } = useRead('offers.list', {});
  const { send, busy } = useWrite('offers.drop');
  const notice = useNotice();
  const note = useMarginNote();
  const [open, setOpen] = useState<string | null>(null);
  if (data === undefined) return null;
  const drop = async (offer: ListedOffer) => {
    const answer = await send({ key: offer.key });
    notice.say(answer.ok ? words.offerDropped(offer.seller) : answer.sentence);
  };
  const done = () => {
    setOpen(null);
    requestAnimationFrame(() => document.querySelector<HTMLButtonElement>('.offer-new')?.focus());
  };
  const changing = data.offers.find(({ key }) => key === open) ?? null;
  return (
    <section className="section" aria-label={words.offers}>
      <h2>{words.offers}</h2>
      {data.offers.length === 0 ? <p className="soft">{words.offersNone}</p> : null}
      {open === null ? (
        <p className="acts">
          <button type="button" className="offer-new" onClick={() => setOpen('new')}>
            {words.offerNew}
          </button>
        </p>
      ) : (
        <OfferForm key={open} offer={changing} onDone={done} />
      )}
      {data.offers.length === 0 ? null : (
        <table className="tight">
          <caption className="visually-hidden">{words.offers}</caption>
          <thead>
            <tr>
              <th scope="col">{words.offerFields.seller}</th>
              <th scope="col">{words.what}</th>
              <th scope="col">{words.each}</th>
              <th scope="col">{words.orderBy}</th>
              <th scope="col">{words.delivery}</th>
              <td />
            </tr>
          </thead>
          <tbody>
            {data.offers.map((offer) => (
              <tr key={offer.key} tabIndex={0} {...note(<OfferNote offer={offer} />)}>
                <th scope="row">{offer.seller}</th>
                <td>{offer.words}</td>
                <td>{words.steps(offer.steps.map(({ from, each }) => ({ from, text: money(each) })))}</td>
                <td className={offer.late ? 'needs' : undefined}>
                  {dayText(offer.orderBy)}
                  {offer.late ? `, ${words.late}` : ''}
                </td>
                <td>{deliveryText([offer.deliveryFrom, offer.deliveryUntil])}</td>
                <td className="offer-acts">
                  <button type="button" className="link" onClick={() => setOpen(offer.key)}>
                    {words.offerChange}
                    <span className="visually-hidden">
                      {' '}
                      ({offer.seller}, {offer.words})
                    </span>
                  </button>{' '}
                  <button type="button" className="link" disabled={busy} onClick={() => void drop(offer)}>
                    {words.offerDrop}
                    <span className="visually-hidden">
                      {' '}
                      ({offer.seller}, {offer.words})
                    </span>
                  </button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

function OfferNote({ offer }: { readonly offer: ListedOffer }) {
  const facts: [string, string][] = [
    [words.offerFields.least, number(offer.least)],
    [words.offerFields.most, offer.most === null ? missing : number(offer.most)],
    [words.offerFields.deposit, money(offer.deposit)],
  ];
  return (
    <MarginPart heading={`${offer.seller}: ${offer.words}`}>
      {offer.remarks.map((remark) => (
        <p key={remark} className="needs">
          {remark}
        </p>
      ))}
      {facts.map(([name, value]) => (
        <p key={name}>
          {name}: {value}
        </p>
      ))}
      {offer.note === null ? null : <p>{offer.note}</p>}
    </MarginPart>
  );
}
