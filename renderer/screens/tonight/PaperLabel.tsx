/** Longer ones must be able to break, or they push the table off the paper. */
const longest = 16;

/** A colony's label as it is painted on the hive: in one piece, also where it has a hyphen. */
export function PaperLabel({ label }: { readonly label: string }) {
  return <bdi className={label.length > longest ? undefined : 'paper-label'}>{label}</bdi>;
}
