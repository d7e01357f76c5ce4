"use server";
import { handOverToInvoicing } from "@/lib/operations/invoicing/hand-over";
import { formAction } from "@/lib/web/form-action";
import type { FormState } from "@/lib/web/form-state";

const handOver = formAction(handOverToInvoicing, {
  parse: () => ({}),
  done: ({ number }) => `${number} is made. Download it below.`,
});
export const handOverAction = async (state: FormState, data: FormData) => handOver(state, data);
