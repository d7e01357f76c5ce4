import type { Tx } from "@/lib/data/in-scope";
import { demandSaved } from "@/lib/data/versioned";
import { isoDay } from "@/lib/domain/calibration/due";
import type { PriceKey, PricePer } from "@/lib/domain/price/keys";
import type { Price } from "@/lib/domain/price/price";

/** All there ever were, by what they are for. The words are closed lists of the operation that wrote them. */
export const loadPrices = async (tx: Tx): Promise<Price[]> => {
  const rows = await tx.priceItem.findMany({
    orderBy: [{ key: "asc" }, { per: "asc" }, { typeLetter: "asc" }, { validFrom: "desc" }, { id: "asc" }],
  });
  return rows.map(({ id, title, typeLetter, amount, ...row }) => ({
    ...{ id, title, typeLetter, amount },
    key: row.key as PriceKey,
    per: row.per as PricePer,
    validFrom: isoDay(row.validFrom),
    validUntil: row.validUntil && isoDay(row.validUntil),
  }));
};

export const insertPrice = (
  tx: Tx,
  { validFrom, ...price }: Omit<Price, "id" | "validUntil">,
  recorded: { readonly recordedById: string; readonly recordedAt: Date },
) =>
  tx.priceItem.create({
    data: { ...price, ...recorded, validFrom: new Date(validFrom) },
    select: { id: true },
  });

/** Only from open to ended: what was ended is not ended again. */
export const endPrice = async (tx: Tx, id: string, lastDay: string): Promise<void> =>
  demandSaved(
    await tx.priceItem.updateMany({
      where: { id, validUntil: null },
      data: { validUntil: new Date(lastDay) },
    }),
  );

/** What the laboratory reckons in. */
export const loadCurrency = async (tx: Tx): Promise<string> =>
  (await tx.laboratory.findUnique({ where: { id: "laboratory" }, select: { currency: true } }))?.currency ??
  "GBP";

export const saveCurrency = async (tx: Tx, currency: string): Promise<void> => {
  await tx.laboratory.update({
    where: { id: "laboratory" },
    data: { currency, version: { increment: 1 } },
  });
};
