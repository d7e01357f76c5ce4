import "server-only";
import { cookies, headers } from "next/headers";
import { forbidden, redirect } from "next/navigation";
import { decode } from "next-auth/jwt";
import { cache } from "react";
import { z } from "zod";
import type { Actor } from "@/lib/domain/staff/actor";
import { may, type Permission } from "@/lib/domain/staff/permissions";
import { markSeen } from "@/lib/operations/staff/sign-in-seen";
import { actorView } from "@/lib/views/actor";
import { connectDatabase } from "./connect-database";
import { env } from "./env";
import { requestPathHeader } from "./request-path";
import { cookieNames, sessionSeconds } from "./session-cookie";

export type StaffActor = Extract<Actor, { kind: "staff" }>;
export type CustomerActor = Extract<Actor, { kind: "customer" }>;

const Session = z.object({
  personId: z.uuid(),
  sessionEpoch: z.int(),
  sessionId: z.uuid(),
  signedInAt: z.number(),
});

/** What a session cookie says, if it is ours, whole and not too old; nothing in it is trusted beyond that. */
export const sessionOf = async (token: string | undefined, nowSeconds: number) => {
  if (!token) return null;
  // A cookie of another installation on this host, or a damaged one, does not decrypt: that person is signed out.
  const payload = await decode({ token, secret: env().secret }).catch(() => null);
  const parsed = Session.safeParse(payload);
  // next-auth would extend a token for ever through its session address; a working day is the limit.
  return parsed.success && nowSeconds - parsed.data.signedInAt < sessionSeconds ? parsed.data : null;
};

/** The person of this request, or null. Once per request: within it, one answer. */
export const currentActor = cache(async (): Promise<Actor | null> => {
  connectDatabase();
  const token = (await cookies()).get(cookieNames(env().isHttps).session)?.value;
  const session = await sessionOf(token, Date.now() / 1000);
  const seen = session && (await actorView(session, new Date()));
  if (!seen) return null;
  await markSeen(session.sessionId, seen.lastSeenAt, new Date());
  return seen.actor;
});

/** What the laboratory asks for comes before anything else: without it, the actor holds no role. */
const setUpFirst = (actor: Actor | null): void => {
  if (actor && actor.kind !== "system" && actor.mustSetUp) redirect("/account/codes");
};

const signInFirst = async (): Promise<never> => {
  const path = (await headers()).get(requestPathHeader);
  return redirect(path && path !== "/" ? `/sign-in?to=${encodeURIComponent(path)}` : "/sign-in");
};

/** Somebody of the laboratory; customers are led to their own side. */
export const requireStaff = async (): Promise<StaffActor> => {
  const actor = await currentActor();
  setUpFirst(actor);
  if (actor?.kind === "staff") return actor;
  if (actor?.kind === "customer") return redirect("/portal");
  return signInFirst();
};

/** Somebody of a customer; staff are led to theirs. */
export const requireCustomer = async (): Promise<CustomerActor> => {
  const actor = await currentActor();
  setUpFirst(actor);
  if (actor?.kind === "customer") return actor;
  if (actor?.kind === "staff") return redirect("/");
  return signInFirst();
};

/** Somebody who may do this: decides what a page shows. Operations and views check for themselves again. */
export const requirePermission = async (permission: Permission): Promise<StaffActor | CustomerActor> => {
  const actor = await currentActor();
  setUpFirst(actor);
  if (!actor || actor.kind === "system") return signInFirst();
  if (!may(actor.roles, permission)) return forbidden();
  return actor;
};
