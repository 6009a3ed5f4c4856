import { dueWords } from './dueWords.ts';

interface RuleNumber {
  readonly key?: string;
  readonly label: string;
  readonly value: string;
  readonly source: string;
  readonly confidence: keyof typeof dueWords.confidence;
}

/** House numbers that something goes by, each with where it comes from. */
export function RuleNumbers({ numbers }: { readonly numbers: readonly RuleNumber[] }) {
  return (
    <ul className="rules">
      {numbers.map(({ key, label, value, source, confidence }) => (
        <li key={key ?? label}>
          <p>
            {label}: <strong>{value}</strong>
          </p>
          <p className="soft small">
            {source}
            {dueWords.confidence[confidence]}.
          </p>
        </li>
      ))}
    </ul>
  );
}
