import "server-only";
import { headers } from "next/headers";
import { redirect } from "next/navigation";
import type { z } from "zod";
import { execute } from "@/lib/operations/execute";
import type { Operation } from "@/lib/operations/operation";
import { clientOf } from "./client-of";
import { connectDatabase } from "./connect-database";
import { env } from "./env";
import { type FormAction, foreignOriginMessage, refusedState, stateOfError } from "./form-action";
import { isOwnOrigin } from "./origin";

type Options = { readonly parse: (data: FormData) => unknown; readonly redirect: string };

/** For whoever holds a one-time link and nothing else: the platform acts, and the operation judges the link. */
export const publicAction =
  <S extends z.ZodType, O>(operation: Operation<S, O>, part: string, options: Options): FormAction =>
  async (_state, data) => {
    try {
      if (!isOwnOrigin((await headers()).get("origin"), env().publicOrigin))
        return refusedState(data, foreignOriginMessage(env().publicOrigin));
      connectDatabase();
      const actor = { kind: "system", name: part } as const;
      await execute(operation, actor, options.parse(data) as z.input<S>, () => new Date());
    } catch (error) {
      return stateOfError(error, data, operation.name);
    }
    redirect(options.redirect);
  };

type Work = { readonly name: string; readonly redirect: string };

/** For whoever has no link yet and asks for one: several steps, each of them an operation's own. */
export const publicWork =
  (work: (data: FormData, client: string) => Promise<void>, { name, redirect: to }: Work): FormAction =>
  async (_state, data) => {
    try {
      const sent = await headers();
      if (!isOwnOrigin(sent.get("origin"), env().publicOrigin))
        return refusedState(data, foreignOriginMessage(env().publicOrigin));
      connectDatabase();
      await work(data, clientOf(sent.get("x-forwarded-for")));
    } catch (error) {
      return stateOfError(error, data, name);
    }
    redirect(to);
  };
