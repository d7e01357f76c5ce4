import "server-only";
import { headers } from "next/headers";
import { redirect } from "next/navigation";
import type { z } from "zod";
import { execute } from "@/lib/operations/execute";
import type { Operation } from "@/lib/operations/operation";
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
