import { execute } from "@/lib/operations/execute";
import { recordPrice } from "@/lib/operations/price/record";
import { makeQuotation } from "@/lib/operations/quotation/make";
import { clock, type FrontDesk } from "./front-desk";

export const publicUrl = "http://127.0.0.1:3000";

/** A short invented list: each point of each sensor, and a set-up for each sensor. */
export const recordedPrices = async (desk: FrontDesk): Promise<void> => {
  const price = { key: "calibration", typeLetter: "", validFrom: "2026-03-04" } as const;
  const record = (more: { title: string; per: "point" | "sensor"; amount: string }) =>
    execute(recordPrice, desk.frontDesk, { ...price, ...more }, clock);
  await record({ title: "Calibration point", per: "point", amount: "25" });
  await record({ title: "Set-up and certificate", per: "sensor", amount: "12.50" });
};

export const offered = (desk: FrontDesk, number: string, validUntil = "2026-04-30") =>
  execute(makeQuotation, desk.frontDesk, { number, validUntil, publicUrl }, clock);
