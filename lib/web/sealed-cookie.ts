import "server-only";
import { cookies } from "next/headers";
import { decode, encode } from "next-auth/jwt";
import type { z } from "zod";
import { env } from "./env";
import { cookieNames } from "./session-cookie";

type Kind = "step" | "recovery" | "link";

const salt = (kind: Kind): string => `emfolio ${kind}`;

/**
 * A note to ourselves that the browser carries and cannot read: sealed with a key of its own kind, so that none passes
 * for another or for a session, and only for minutes. In route handlers and actions alone, where cookies may be set.
 */
export const setSealed = async (
  kind: Kind,
  note: Record<string, unknown>,
  seconds: number,
): Promise<void> => {
  const { secret, isHttps } = env();
  const value = await encode({ token: note, secret, salt: salt(kind), maxAge: seconds });
  const options = { httpOnly: true, sameSite: "lax", path: "/", secure: isHttps } as const;
  (await cookies()).set({ name: cookieNames(isHttps)[kind], value, maxAge: seconds, ...options });
};

/** What it says, or null where it is missing, not ours, damaged or too old. */
export const readSealed = async <T>(kind: Kind, shape: z.ZodType<T>): Promise<T | null> => {
  const { secret, isHttps } = env();
  const token = (await cookies()).get(cookieNames(isHttps)[kind])?.value;
  if (!token) return null;
  const note = await decode({ token, secret, salt: salt(kind) }).catch(() => null);
  const read = shape.safeParse(note);
  return read.success ? read.data : null;
};

export const dropSealed = async (kind: Kind): Promise<void> => {
  const { isHttps } = env();
  (await cookies()).delete({ name: cookieNames(isHttps)[kind], path: "/", secure: isHttps });
};
