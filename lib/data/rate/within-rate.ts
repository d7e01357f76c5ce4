import { inScope } from "../in-scope";
import { countRate } from "../sql/count-rate";

export type Rate = {
  readonly isWithin: boolean;
  readonly limit: number;
  readonly remaining: number;
  readonly resetsInSeconds: number;
};

/**
 * Counts one more of `key` and says whether it is within `limit` a window. In a transaction of its own: what is refused
 * afterwards was asked all the same. Windows stand at fixed times; those of yesterday are swept.
 */
export const withinRate = (key: string, limit: number, windowSeconds: number, now: Date): Promise<Rate> =>
  inScope({ kind: "laboratory" }, async (tx) => {
    const width = windowSeconds * 1000;
    const windowStart = new Date(Math.floor(now.getTime() / width) * width);
    const [row] = await countRate(tx, key, windowStart);
    const count = row?.count ?? 1;
    if (count === 1)
      await tx.rateCount.deleteMany({ where: { windowStart: { lt: new Date(now.getTime() - 86_400_000) } } });
    return {
      isWithin: count <= limit,
      limit,
      remaining: Math.max(0, limit - count),
      resetsInSeconds: Math.max(1, Math.ceil((windowStart.getTime() + width - now.getTime()) / 1000)),
    };
  });
