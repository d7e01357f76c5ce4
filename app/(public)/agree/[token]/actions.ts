"use server";
import { agreeByLink } from "@/lib/operations/agreement/agree-by-link";
import { text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";
import { publicAction } from "@/lib/web/public-action";

const answer = publicAction(agreeByLink, "link", {
  parse: (data) => ({
    token: text(data, "token"),
    name: text(data, "name"),
    answer: text(data, "answer"),
    contentHash: text(data, "contentHash"),
    purchaseOrder: text(data, "purchaseOrder"),
    remark: text(data, "remark"),
  }),
  redirect: "/agree/answered",
});

export const agreeByLinkAction = async (state: FormState, data: FormData): Promise<FormState> =>
  answer(state, data);
