import type { FurnaceRange } from "@/lib/domain/order/contract-review";
import type { Tx } from "../in-scope";

/** What the laboratory's furnaces reach: a contract review asks whether it has the means (7.1.1 b). */
export const furnaceRanges = (tx: Tx): Promise<FurnaceRange[]> =>
  tx.furnace.findMany({
    select: { name: true, minimumCelsius: true, maximumCelsius: true },
    orderBy: { tag: "asc" },
  });
