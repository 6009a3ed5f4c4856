import { storyWords as words } from './storyWords.ts';

export interface ReasonFieldProps {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly lacking: boolean;
  readonly onChange: (value: string) => void;
}

/** Why an entry is mended; it stays beside the struck one, so it must be given. */
export function ReasonField({ id, label, value, lacking, onChange }: ReasonFieldProps) {
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        name={id}
        type="text"
        autoComplete="off"
        maxLength={500}
        value={value}
        aria-required
        aria-invalid={lacking}
        aria-describedby={lacking ? `${id}-fault` : undefined}
        onChange={(event) => onChange(event.target.value)}
      />
      {lacking ? (
        <p className="field-fault" id={`${id}-fault`} role="alert">
          {words.strikeLacking}
        </p>
      ) : null}
    </div>
  );
}
