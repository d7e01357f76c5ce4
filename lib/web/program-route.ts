import "server-only";
import type { Program } from "@/lib/domain/machine/program";
import type { TokenScope } from "@/lib/domain/machine/scopes";
import type { Problem } from "@/lib/domain/machine/wire/problem";
import { Refused } from "@/lib/domain/refusal";
import { admitProgram } from "@/lib/operations/machine/admit-program";
import { connectDatabase } from "./connect-database";
import { refusalStatus } from "./refusal-status";

type Headers = Readonly<Record<string, string>>;

const always: Headers = { "cache-control": "private, no-store", "x-content-type-options": "nosniff" };

/** RFC 9457. */
export const problemResponse = (problem: Problem, headers: Headers = {}): Response =>
  new Response(JSON.stringify(problem), {
    status: problem.status,
    headers: { ...always, "content-type": "application/problem+json", ...headers },
  });

export const jsonResponse = (value: unknown, status = 200): Response =>
  new Response(JSON.stringify(value), { status, headers: { ...always, "content-type": "application/json" } });

export const notHereProblem = (): Response =>
  problemResponse({
    title: "Not here",
    status: 404,
    detail: "There is nothing of this number that this token opens.",
  });

const titles: Readonly<Record<number, string>> = {
  403: "Not permitted",
  404: "Not here",
  409: "Not now",
  422: "The request does not hold",
  429: "Too many requests",
};

const problemOf = (error: unknown): Response => {
  if (error instanceof Refused) {
    const { code, message, fields } = error.refusal;
    const status = refusalStatus[code];
    return problemResponse({
      title: titles[status] ?? "Refused",
      status,
      detail: message,
      ...(fields ? { fields: { ...fields } } : {}),
    });
  }
  console.error("the interface failed", error);
  return problemResponse({
    title: "Our fault",
    status: 500,
    detail: "Something went wrong on our side. Try again.",
  });
};

const wait = (seconds: number): Headers => ({ "retry-after": String(seconds) });

/**
 * One address of the interface for programs: token, rate and scope first, then the question. No cookie opens it, so no
 * page of somebody else's can use a person's session for it.
 */
export const programRoute =
  <C>(scope: TokenScope, answer: (program: Program, request: Request, context: C) => Promise<Response>) =>
  async (request: Request, context: C): Promise<Response> => {
    connectDatabase();
    try {
      const admission = await admitProgram(request.headers.get("authorization"), scope, () => new Date());
      if (admission.kind === "unknown")
        return problemResponse(
          { title: "No token", status: 401, detail: "Send Authorization: Bearer and a token in force." },
          { "www-authenticate": 'Bearer realm="emfolio"' },
        );
      if (admission.kind === "too-many") {
        const { resetsInSeconds } = admission.rate;
        const detail = `Go on in ${resetsInSeconds} s.`;
        return problemResponse({ title: "Too many requests", status: 429, detail }, wait(resetsInSeconds));
      }
      if (admission.kind === "closed")
        return problemResponse({
          title: "Not opened",
          status: 403,
          detail: `This needs a token for ${scope}.`,
        });
      return await answer(admission.program, request, context);
    } catch (error) {
      return problemOf(error);
    }
  };
