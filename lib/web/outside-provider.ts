import "server-only";
import type { OAuthConfig } from "next-auth/providers/oauth";
import { z } from "zod";
import { Refused } from "@/lib/domain/refusal";
import { ownAccountOf } from "@/lib/domain/staff/actor";
import { linkOutside } from "@/lib/operations/account/outside-link";
import { execute } from "@/lib/operations/execute";
import { outsidePerson } from "@/lib/operations/staff/sign-in-outside";
import { beginSession } from "@/lib/operations/staff/sign-in-session";
import { currentActor } from "./auth";
import { deviceOfRequest, type SignedIn, secondStepSeconds } from "./authorize";
import { connectDatabase } from "./connect-database";
import { env } from "./env";
import { dropSealed, readSealed, setSealed } from "./sealed-cookie";

export const outsideId = "openid";

/** What of a checked ID token (OpenID Connect Core 1.0, 3.1.3.7) counts here: who vouches, and for whom. */
const Claims = z.object({ iss: z.url(), sub: z.string().min(1).max(255) });
const LinkNote = z.object({ personId: z.uuid() });
const clock = () => new Date();

/** Code flow with PKCE, state and nonce; the library checks issuer, audience, times and signature of the ID token. */
export const outsideProvider = (): OAuthConfig<z.output<typeof Claims>> | null => {
  const { outside } = env();
  if (!outside) return null;
  return {
    id: outsideId,
    name: "openid",
    type: "oauth",
    wellKnown: `${outside.issuer.replace(/\/$/, "")}/.well-known/openid-configuration`,
    issuer: outside.issuer,
    clientId: outside.clientId,
    clientSecret: outside.clientSecret,
    idToken: true,
    checks: ["pkce", "state", "nonce"],
    authorization: { params: { scope: "openid" } },
    profile: (claims) => ({ id: claims.sub }),
  };
};

/** Somebody who is signed in here, and asked for it a moment ago, comes back from the provider. */
const link = async (key: { readonly issuer: string; readonly subject: string }, personId: string) => {
  await dropSealed("link");
  const actor = await currentActor();
  // The note is theirs who is signed in now, or nobody's.
  if (!actor || actor.kind === "system" || actor.personId !== personId) return "/sign-in?error=outside";
  try {
    await execute(linkOutside, ownAccountOf(actor), key, clock);
    return "/account?said=linked";
  } catch (error) {
    if (error instanceof Refused) return "/account?said=not-linked";
    throw error;
  }
};

/** true: go on to the session; a text: the address to go to instead. */
export const admitOutside = async (claims: unknown): Promise<true | string> => {
  connectDatabase();
  const { iss: issuer, sub: subject } = Claims.parse(claims);
  const note = await readSealed("link", LinkNote);
  if (note) return link({ issuer, subject }, note.personId);
  const answer = await outsidePerson({ issuer, subject }, clock);
  if (answer.kind === "refused") return "/sign-in?error=outside";
  if (answer.kind === "person") return true;
  const { personId, sessionEpoch } = answer;
  await setSealed("step", { personId, sessionEpoch, atBench: false, cameBy: "openid" }, secondStepSeconds);
  return "/second-factor";
};

/** The session of whom `admitOutside` let go on; asked anew, because a moment lies between. */
export const sessionOutside = async (claims: unknown): Promise<SignedIn> => {
  const { iss: issuer, sub: subject } = Claims.parse(claims);
  const answer = await outsidePerson({ issuer, subject }, clock);
  if (answer.kind !== "person") throw new Error("failed");
  const { personId, sessionEpoch } = answer;
  const begin = { personId, sessionEpoch, atBench: false, cameBy: "openid", hadCode: false } as const;
  const opened = await beginSession({ ...begin, device: await deviceOfRequest() }, clock);
  if (!opened) throw new Error("failed");
  return { id: opened.personId, sessionEpoch: opened.sessionEpoch, sessionId: opened.sessionId };
};
