import type { RollEnd } from "../sensor/build";

/** A piece of material: what intake says of it, whoever asks. */
export type OfRoll = {
  readonly lot?: string | undefined;
  readonly roll?: string | undefined;
  readonly end?: RollEnd | undefined;
};

/** A roll, of which one end alone is there. `tags`: of its pieces, where they have any. */
export type OneEnd = { readonly lot: string; readonly roll: string; readonly tags: readonly string[] };

export const rollName = ({ lot, roll }: Pick<OneEnd, "lot" | "roll">): string => `lot ${lot}, roll ${roll}`;

export const isSameRoll = (a: OfRoll, b: OfRoll): boolean => a.lot === b.lot && a.roll === b.roll;

/**
 * Rolls of which not both ends are among the pieces, each once: a piece of which nobody said the end stands for none.
 * `asked`: only rolls of these pieces are looked at.
 */
export const rollsOnOneEnd = (
  pieces: readonly (OfRoll & { readonly tag?: string })[],
  asked: readonly (OfRoll & { readonly tag?: string })[] = pieces,
): readonly OneEnd[] => {
  const rolls = new Map<string, OneEnd>();
  for (const { lot, roll } of asked) {
    if (!lot || !roll || rolls.has(rollName({ lot, roll }))) continue;
    const own = pieces.filter((piece) => isSameRoll(piece, { lot, roll }));
    if (new Set(own.flatMap(({ end }) => end ?? [])).size < 2)
      rolls.set(rollName({ lot, roll }), {
        ...{ lot, roll },
        tags: asked.filter((piece) => isSameRoll(piece, { lot, roll })).flatMap(({ tag }) => tag ?? []),
      });
  }
  return [...rolls.values()];
};

/** Pieces of a list that is to be taken in, of which no second end is among them or here: said before they are stored. */
export const onlyOneEnd = (listed: readonly OfRoll[], here: readonly OfRoll[] = []): readonly string[] =>
  rollsOnOneEnd([...here, ...listed], listed).map((roll) => {
    const ends = new Set(listed.flatMap((piece) => (isSameRoll(piece, roll) ? (piece.end ?? []) : [])));
    const [only] = ends;
    return `${rollName(roll)}: ${only ? `only its ${only} end` : "nobody said which end"}`;
  });
