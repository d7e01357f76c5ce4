import "server-only";
import { refresh, revalidatePath } from "next/cache";
import { headers } from "next/headers";
import { redirect } from "next/navigation";
import type { z } from "zod";
import { Refused } from "@/lib/domain/refusal";
import { execute } from "@/lib/operations/execute";
import type { Operation } from "@/lib/operations/operation";
import { currentActor } from "./auth";
import { env } from "./env";
import type { FormState } from "./form-state";
import { isOwnOrigin } from "./origin";

/** A sentence for the person, or the next page. Stored but no good news: the sentence with a word in place of "Done". */
export type Done =
  | string
  | { readonly redirect: string }
  | { readonly caution: string; readonly message: string };

type FormActionOptions<O> = {
  /** Form data → the operation's input; the operation's schema judges it (see form-fields.ts). */
  readonly parse: (data: FormData) => unknown;
  readonly done?: (value: O) => Done;
  /** Other pages that show what changed; the page of the form itself is always read anew. */
  readonly revalidate?: readonly string[];
};

export type FormAction = (state: FormState, data: FormData) => Promise<FormState>;

const neverKept = /password|secret|token/i;

/** What was typed, for a form that was refused. Passwords and the framework's own fields are not sent back. */
export const keptValues = (data: FormData): Record<string, string | string[]> => {
  const kept: Record<string, string | string[]> = {};
  for (const name of new Set(data.keys())) {
    if (name.startsWith("$ACTION") || neverKept.test(name)) continue;
    const values = data.getAll(name).filter((value) => typeof value === "string");
    const [first] = values;
    if (first !== undefined) kept[name] = values.length > 1 ? values : first;
  }
  return kept;
};

export const refusedState = (
  data: FormData,
  message: string,
  fields: Readonly<Record<string, string>> = {},
): FormState => ({ status: "refused", message, fields: { ...fields }, values: keptValues(data) });

/** Refusals speak to the person; anything else is ours to read in the server's log, never theirs. */
export const stateOfError = (error: unknown, data: FormData, name: string): FormState => {
  if (error instanceof Refused) return refusedState(data, error.refusal.message, error.refusal.fields);
  console.error(`${name} failed`, error);
  return refusedState(
    data,
    "Something went wrong on our side and nothing was stored. What you typed is still here; please try again.",
  );
};

export const foreignOriginMessage = (publicOrigin: string): string =>
  `This form was not sent from ${publicOrigin}, the laboratory's own address, so nothing was stored. Open the page there and send it again.`;

/**
 * One operation as a server action. A "use server" file may export async functions only, so an actions.ts reads:
 *
 *     "use server";
 *     const accept = formAction(acceptOrder, { parse: (data) => ({ orderId: text(data, "orderId") }) });
 *     export const acceptOrderAction = async (state: FormState, data: FormData) => accept(state, data);
 */
export const formAction =
  <S extends z.ZodType, O>(operation: Operation<S, O>, options: FormActionOptions<O>): FormAction =>
  async (_state, data) => {
    let done: Done;
    try {
      if (!isOwnOrigin((await headers()).get("origin"), env().publicOrigin))
        return refusedState(data, foreignOriginMessage(env().publicOrigin));
      const actor = await currentActor();
      if (!actor)
        return refusedState(
          data,
          "Your session has ended. Sign in again in another tab, then send this once more.",
        );
      const value = await execute(operation, actor, options.parse(data) as z.input<S>, () => new Date());
      done = options.done?.(value) ?? "Saved.";
    } catch (error) {
      return stateOfError(error, data, operation.name);
    }
    for (const path of options.revalidate ?? []) revalidatePath(path);
    if (typeof done !== "string" && "redirect" in done) redirect(done.redirect);
    refresh();
    return typeof done === "string" ? { status: "done", message: done } : { status: "done", ...done };
  };
