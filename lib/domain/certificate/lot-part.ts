/** Which part of its lot a certificate is: a lot larger than a load is measured in several runs, and each gets its own. */
export type LotPart = {
  /** 1 for the first certificate of the lot. */
  readonly part: number;
  readonly covers: number;
  /** Sensors of the lot as ordered. */
  readonly of: number;
};

/**
 * `earlier`: of each certificate of the lot, the sensors it speaks of. An amendment speaks of the same sensors as what
 * it amends, and is no part of its own.
 */
export const lotPart = (
  earlier: readonly (readonly string[])[],
  covers: number,
  ordered: number,
): LotPart => ({
  part: new Set(earlier.map((ids) => ids.toSorted().join(" "))).size + 1,
  covers,
  of: ordered,
});

export const lotPartText = ({ part, covers, of }: LotPart): string =>
  part === 1 && covers >= of
    ? `one certificate for the lot of ${of}`
    : `part ${part} of the lot: ${covers} of ${of} sensors`;
