import type { Task } from "graphile-worker";
import { answerReset } from "@/lib/operations/account/answer-reset";
import type { Work } from "./work";

/** A forgotten password: whether anybody signs in with the address is found out here, where nobody waits for the answer. */
export const answerResetTask =
  ({ publicUrl, clock }: Work): Task =>
  async (payload) => {
    const { email } = payload as { readonly email: string };
    await answerReset(email, publicUrl, clock);
  };
