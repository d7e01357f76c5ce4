import "server-only";
import { headers } from "next/headers";
import { z } from "zod";
import { deviceWords } from "@/lib/domain/account/device-words";
import { Refused } from "@/lib/domain/refusal";
import { type SignInAnswer, signIn } from "@/lib/operations/staff/sign-in";
import { signInWithCode } from "@/lib/operations/staff/sign-in-code";
import { connectDatabase } from "./connect-database";
import { env } from "./env";
import { dropSealed, readSealed, setSealed } from "./sealed-cookie";

/** What `authorize` hands to the token; nothing else goes into the cookie. */
export type SignedIn = { readonly id: string; readonly sessionEpoch: number; readonly sessionId: string };

/** That a password (or the outside provider) was right, for the few minutes that a code takes. */
export const SecondStep = z.object({
  personId: z.uuid(),
  sessionEpoch: z.int(),
  atBench: z.boolean(),
  cameBy: z.enum(["password", "openid"]),
});
export const secondStepSeconds = 300;

type Typed = Record<string, unknown> | undefined;
const typed = (value: unknown): string => (typeof value === "string" ? value : "");
/** The words that the sign-in page knows; next-auth passes what is thrown on as `?error=`. */
const known = /^(wait-\d+|code|code-wait-\d+|code-wrong|code-late)$/;
const clock = () => new Date();
export const deviceOfRequest = async (): Promise<string> =>
  deviceWords((await headers()).get("user-agent") ?? "");

const signedIn = (answer: Extract<SignInAnswer, { kind: "welcome" }>): SignedIn => ({
  ...{ id: answer.personId, sessionEpoch: answer.sessionEpoch, sessionId: answer.sessionId },
});

const guarded = async (work: () => Promise<SignedIn | null>): Promise<SignedIn | null> => {
  connectDatabase();
  try {
    return await work();
  } catch (error) {
    if (error instanceof Refused) throw new Error("busy");
    if (error instanceof Error && known.test(error.message)) throw error;
    console.error("sign-in failed", error);
    throw new Error("failed");
  }
};

/** The first step. Where a code is asked for, the browser gets a sealed note instead of a session. */
export const authorizePassword = (credentials: Typed): Promise<SignedIn | null> =>
  guarded(async () => {
    const atBench = typed(credentials?.bench) === "yes";
    const { email, password } = { email: typed(credentials?.email), password: typed(credentials?.password) };
    const device = await deviceOfRequest();
    const answer = await signIn({ email, password, atBench, device }, clock, env().publicOrigin);
    if (answer.kind === "wait") throw new Error(`wait-${answer.seconds}`);
    if (answer.kind === "code") {
      const { personId, sessionEpoch } = answer;
      await setSealed("step", { personId, sessionEpoch, atBench, cameBy: "password" }, secondStepSeconds);
      throw new Error("code");
    }
    return answer.kind === "welcome" ? signedIn(answer) : null;
  });

/** The second step: the note, and the code that fits it. */
export const authorizeCode = (credentials: Typed): Promise<SignedIn | null> =>
  guarded(async () => {
    const step = await readSealed("step", SecondStep);
    if (!step) throw new Error("code-late");
    const code = typed(credentials?.code);
    const second = { ...step, code, device: await deviceOfRequest() };
    const answer = await signInWithCode(second, clock, env().publicOrigin);
    if (answer.kind === "wait") throw new Error(`code-wait-${answer.seconds}`);
    if (answer.kind !== "welcome") throw new Error("code-wrong");
    await dropSealed("step");
    return signedIn(answer);
  });
