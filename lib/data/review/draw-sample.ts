import type { Tx } from "../in-scope";

type Sample = {
  readonly runId: string;
  readonly evaluationId: string;
  /** 32 random bytes. */
  readonly seed: Uint8Array<ArrayBuffer>;
  readonly drawnAt: Date;
};

/** Once for an evaluation: handed over again after a return, it keeps its lot, so that nobody draws until it suits. */
export const drawSample = async (tx: Tx, sample: Sample): Promise<"drawn" | "kept"> => {
  const earlier = await tx.reviewSample.findUnique({
    where: { evaluationId: sample.evaluationId },
    select: { evaluationId: true },
  });
  if (earlier) return "kept";
  await tx.reviewSample.create({ data: sample });
  return "drawn";
};
