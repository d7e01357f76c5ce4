"use server";
import { repeatOrder } from "@/lib/operations/order/repeat";
import { formAction } from "@/lib/web/form-action";
import { text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const repeat = formAction(repeatOrder, {
  parse: (data) => ({ number: text(data, "number") }),
  done: ({ number }) => ({ redirect: `/orders/${number}` }),
});
export const repeatOrderAction = async (state: FormState, data: FormData) => repeat(state, data);
