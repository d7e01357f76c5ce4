import "server-only";
import { cookies, headers } from "next/headers";
import { redirect } from "next/navigation";
import type { z } from "zod";
import { ownAccountOf } from "@/lib/domain/staff/actor";
import { execute } from "@/lib/operations/execute";
import type { Operation } from "@/lib/operations/operation";
import { currentActor } from "./auth";
import { env } from "./env";
import { type FormAction, foreignOriginMessage, refusedState, stateOfError } from "./form-action";
import { isOwnOrigin } from "./origin";
import { cookieNames } from "./session-cookie";

type Options = { readonly parse: (data: FormData) => unknown; readonly redirect: string };

/** A person's own account, staff or customer: what ends their sessions, this one included. */
export const accountAction =
  <S extends z.ZodType, O>(operation: Operation<S, O>, options: Options): FormAction =>
  async (_state, data) => {
    try {
      if (!isOwnOrigin((await headers()).get("origin"), env().publicOrigin))
        return refusedState(data, foreignOriginMessage(env().publicOrigin));
      const actor = await currentActor();
      if (actor && actor.kind !== "system")
        await execute(operation, ownAccountOf(actor), options.parse(data) as z.input<S>, () => new Date());
      (await cookies()).delete({
        name: cookieNames(env().isHttps).session,
        path: "/",
        secure: env().isHttps,
      });
    } catch (error) {
      return stateOfError(error, data, operation.name);
    }
    redirect(options.redirect);
  };
