export type Ending = {
  readonly kind: string;
  readonly reason: string;
  readonly effectiveAt: Date;
};

/** A key may be retired and revoked later: then the revocation counts. */
export const endingThatCounts = <E extends Ending>(endings: readonly E[]): E | null =>
  endings.find(({ kind }) => kind === "revoked") ?? endings[0] ?? null;
