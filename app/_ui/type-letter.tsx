/**
 * Insulation colour of the positive leg of extension and compensating cable by type, IEC 60584-3 (values from memory).
 * The word stands beside the swatch or in its text alternative, so that colour never speaks alone.
 */
const colours: Readonly<Record<string, { readonly word: string; readonly variable: string }>> = {
  K: { word: "green", variable: "--iec-k" },
  N: { word: "pink", variable: "--iec-n" },
  R: { word: "orange", variable: "--iec-s" },
  S: { word: "orange", variable: "--iec-s" },
  B: { word: "grey", variable: "--iec-b" },
  E: { word: "violet", variable: "--iec-e" },
  J: { word: "black", variable: "--iec-j" },
  T: { word: "brown", variable: "--iec-t" },
};

type Props = {
  readonly letter: string;
  /** Write the colour's name beside the swatch. */
  readonly labelled?: boolean;
};

export function TypeLetter({ letter, labelled }: Props) {
  const colour = colours[letter];
  const words = colour ? `Type ${letter}, ${colour.word} (IEC 60584-3)` : `Type ${letter}`;
  return (
    <span className="type-letter" title={words}>
      {colour ? (
        <span
          className="type-letter-swatch"
          style={{ background: `var(${colour.variable})` }}
          aria-hidden="true"
        />
      ) : null}
      <span>
        <span className="unseen">Type </span>
        {letter}
      </span>
      {colour && labelled ? <span className="type-letter-colour">{colour.word}</span> : null}
    </span>
  );
}
