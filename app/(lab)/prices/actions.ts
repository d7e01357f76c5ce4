"use server";
import { endPriceOfList } from "@/lib/operations/price/end";
import { recordPrice } from "@/lib/operations/price/record";
import { setCurrency } from "@/lib/operations/price/set-currency";
import { formAction } from "@/lib/web/form-action";
import { text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const fields = ["key", "title", "per", "typeLetter", "amount", "validFrom"];

const record = formAction(recordPrice, {
  parse: (data) => Object.fromEntries(fields.map((name) => [name, text(data, name)])),
  done: () => "The price is on the list.",
});
export const recordPriceAction = async (state: FormState, data: FormData) => record(state, data);

const end = formAction(endPriceOfList, {
  parse: (data) => ({ id: text(data, "id"), lastDay: text(data, "lastDay") }),
  done: () => "The price has its last day.",
});
export const endPriceAction = async (state: FormState, data: FormData) => end(state, data);

const currency = formAction(setCurrency, {
  parse: (data) => ({ currency: text(data, "currency") }),
  done: (set) => `Prices are in ${set.currency}.`,
});
export const setCurrencyAction = async (state: FormState, data: FormData) => currency(state, data);
