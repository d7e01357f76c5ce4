import type { Tx } from "@/lib/data/in-scope";
import { nextNumberRow } from "@/lib/data/sql/next-number";
import { nextNumberRows } from "@/lib/data/sql/next-numbers";

/** What the laboratory numbers without gaps. `certificate-2026`: a counter may also be kept per year. */
export type Counter =
  | "order"
  | "sensor"
  | "run"
  | "certificate"
  | `${"order" | "run" | "certificate" | "characterisation" | "quotation" | "shipment" | "invoicing" | "nonconformity"}-${number}`;

/**
 * The next number of a counter, beginning at 1. The counter stays locked until the transaction ends, so that a
 * rollback leaves no gap: take it as late as possible, and counters always in the same order.
 */
export const nextNumber = (tx: Tx, counter: Counter): Promise<number> => nextNumberRow(tx, counter);

/** As many as are needed together: two hundred sensors come in with one question to the database. */
export const nextNumbers = (tx: Tx, counter: Counter, count: number): Promise<readonly number[]> =>
  nextNumberRows(tx, counter, count);
